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
export async function showInBrowser(path: string): Promise<boolean> {
  const { spawn } = await import('node:child_process');
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
