import { spawn } from 'node:child_process';
import process from 'node:process';

/** What each system opens a file with. */
const OPENERS: Readonly<Partial<Record<NodeJS.Platform, readonly [string, ...string[]]>>> = {
  darwin: ['open'],
  win32: ['cmd', '/c', 'start', ''],
};

/**
 * Shows a page in the person's browser.
 *
 * @param path absolute
 * @returns false when nothing could be started
 */
export function showInBrowser(path: string): Promise<boolean> {
  const [command, ...before] = OPENERS[process.platform] ?? ['xdg-open'];
  return new Promise((done) => {
    const child = spawn(command, [...before, path], { detached: true, stdio: 'ignore' });
    child.once('error', () => done(false));
    child.once('spawn', () => {
      child.unref();
      done(true);
    });
  });
}
