import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { atDesk, finding } from './desk.js';

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

test('every option that changes the page is handed on', async () => {
  const options = {
    '--out': 'pages',
    '--format': 'ascii',
    '--curves': 'segments',
    '--bush': '17mm',
    '--projection': 'third-angle',
    '--drawing-units': 'dual',
    '--print-scale': '0.994x1.002',
    '--seat-length': '310',
  };
  const { status, asked } = await atDesk(
    ['open', 'small', '--no-browser', ...Object.entries(options).flat()],
    {
      cwd: '/shed',
      files: ['living-plan.html'],
    },
  );
  expect(status).toBe(0);
  expect(asked).toMatchObject([
    [
      'make',
      {
        out: '/shed/pages',
        only: ['living'],
        values: { seatLength: 310 },
        format: 'ascii',
        curves: 'segments',
        bush: 17,
        projection: 'third-angle',
        drawingUnits: 'dual',
        printScale: '0.994x1.002',
      },
    ],
  ]);
});

test('parameters and a shop are read from files; one that is not there ends it with nothing made or shown', async () => {
  const cwd = await mkdtemp(join(tmpdir(), 'tenonwright-'));
  try {
    await writeFile(join(cwd, 'sizes.yaml'), 'seat-length: 222\n');
    await writeFile(join(cwd, 'shed.yaml'), 'router: { base: { along: 160 } }\n');
    const around = { cwd, files: ['living-plan.html'] };
    const files = ['--from', 'sizes.yaml', '--shop', 'shed.yaml'];
    const { asked } = await atDesk(['open', 'small', '--no-browser', ...files], around);
    expect(asked).toMatchObject([['make', { values: { seatLength: 222 }, shop: { name: 'shed.yaml' } }]]);
    for (const option of ['--from', '--shop', '--ranges']) {
      const shown: string[] = [];
      const missing = await atDesk(['open', 'small', option, 'gone.yaml'], {
        ...around,
        showInBrowser: async (path) => shown.push(path) > 0,
      });
      expect([missing.status, missing.asked, shown], option).toEqual([2, [], []]);
      expect(missing.err).toContain('gone.yaml');
    }
  } finally {
    await rm(cwd, { recursive: true });
  }
});

test('quiet, it only shows the page; a design that fails has its page too, and says so in its status', async () => {
  const shown: string[] = [];
  const around = {
    cwd: '/shed',
    files: ['living-plan.html'],
    showInBrowser: async (path: string) => shown.push(path) > 0,
  };
  const quiet = await atDesk(['open', 'small', '--quiet'], around);
  expect([quiet.status, quiet.out, quiet.err]).toEqual([0, '', '']);
  const failed = await atDesk(['open', 'small', '--quiet'], { ...around, findings: [finding('error')] });
  expect([failed.status, failed.out]).toEqual([3, '']);
  expect(failed.err).toContain('62.0 mm long');
  expect(shown).toHaveLength(2);
});

test('it has no options of files it does not write', async () => {
  for (const option of ['--only', '--json', '--force', '--list-files']) {
    const { status, asked, err } = await atDesk(['open', 'small', option]);
    expect([status, asked], option).toEqual([2, []]);
    expect(err).toContain(option.slice(2));
  }
});
