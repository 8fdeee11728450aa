import { expect, test } from 'vitest';
import { atDesk } from './desk.js';

test('open makes the living plan beside what make wrote, and shows it', async () => {
  const shown: string[] = [];
  const showInBrowser = async (path: string): Promise<boolean> => {
    shown.push(path);
    return true;
  };
  const { status, out, asked } = await atDesk(['open', 'small', '--units', 'in'], {
    cwd: '/shed',
    files: ['living-plan.html'],
    showInBrowser,
  });
  expect(status).toBe(0);
  expect(asked).toMatchObject([['make', { out: '/shed/out/living', only: ['living'] }]]);
  expect(shown).toEqual(['/shed/out/living/small/living-plan.html']);
  expect(out).toContain('Shown in your browser: /shed/out/living/small/living-plan.html');
});

test('without a browser, or without wanting one, the path of the page is told', async () => {
  const around = { cwd: '/shed', files: ['living-plan.html'] };
  const none = await atDesk(['open', 'small'], { ...around, showInBrowser: async () => false });
  expect(none.status).toBe(0);
  expect(none.err).toContain('No browser could be started: open /shed/out/living/small/living-plan.html');
  const shown: string[] = [];
  const unwanted = await atDesk(['open', 'small', '--no-browser'], {
    ...around,
    showInBrowser: async (path) => shown.push(path) > 0,
  });
  expect(shown).toEqual([]);
  expect(unwanted.out).toContain('Open it in a browser: /shed/out/living/small/living-plan.html');
});
