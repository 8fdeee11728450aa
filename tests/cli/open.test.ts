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

test('the page that makes PNG pictures is asked for by an option, and only where the page is made', async () => {
  const opened = await atDesk(['open', 'small', '--no-browser', '--living-pictures'], {
    files: ['living-plan.html'],
  });
  expect(opened.asked).toMatchObject([['make', { only: ['living'], livingPictures: true }]]);
  const without = await atDesk(['make', 'small', '--living-pictures']);
  expect(without).toMatchObject({ status: 2, asked: [] });
  expect(without.err).toContain('--living-pictures is about the living plan, which is not among the kinds');
});
