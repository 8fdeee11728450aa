import { describe, expect, test } from 'vitest';
import { smallModel } from '../model/small-model.js';
import { atDesk, finding } from './desk.js';

const findings = [finding('note'), finding('error'), finding('warning')];

describe('make and check print', () => {
  test('findings with errors first, files with sizes, and what is held back', async () => {
    const { out } = await atDesk(['make', 'small', '--list-files'], { findings, columns: 200 });
    expect(out).toMatch(/Findings: 1 error, 1 warning, 1 note\nerror [\s\S]*\nwarning [\s\S]*\nnote /);
    expect(out).toMatch(/shorten it by 4\.5 mm/);
    expect(out).toMatch(/\nout\/small\/rail\.stl +12\.3 kB\n/);
    expect(out).toMatch(/Not written.*left-side\.mm\.dxf/);
  });

  test('last which file to open first, best first, and no long list unless it is asked for', async () => {
    const files = ['preview.html', 'stl/rail.stl', 'plan.a4.pdf'];
    const { out } = await atDesk(['make', 'small'], { files, columns: 200 });
    expect(out).toContain('\nFiles: 3, 37.0 kB, in out/small (--list-files lists them)\n');
    expect(out).toMatch(/\nOpen first\nout\/small\/plan\.a4\.pdf .*\nout\/small\/preview\.html .*\n$/);
    expect(out).not.toContain('rail.stl');
    expect((await atDesk(['make', 'small'])).out).not.toContain('Open first');
  });

  test('what changed since the last run, a line each, and nothing of it on a first run', async () => {
    const changes = ['parameter rake: 10° -> 12°', 'board rail length: 400.0 mm -> 412.0 mm'];
    const { out } = await atDesk(['make', 'small'], { changes });
    expect(out).toContain(
      '\nChanged since the last run\n- parameter rake: 10° -> 12°\n- board rail length: 400.0 mm -> 412.0 mm\n',
    );
    expect((await atDesk(['make', 'small'])).out).not.toContain('Changed');
  });

  test('check lists no files', async () => {
    expect((await atDesk(['check', 'small'], { findings })).out).not.toMatch(/Files|Not written/);
  });

  test('with --json the summary alone on standard output', async () => {
    const ran = await atDesk(['make', 'small', '--json', '--splay', '4'], { findings });
    expect(JSON.parse(ran.out)).toMatchObject({ design: 'small', values: { splay: 4 } });
    expect(ran.err).toBe('');
    expect(ran.status).toBe(3);
  });

  test('with --quiet nothing, or only the errors', async () => {
    const good = await atDesk(['make', 'small', '--quiet'], { findings: [finding('warning')] });
    expect(good.out + good.err).toBe('');
    const bad = await atDesk(['make', 'small', '--quiet'], { findings });
    expect(bad.out).toBe('');
    expect(bad.err).toMatch(/tenon-bottoms-out/);
    expect(bad.err).not.toMatch(/wall-thin/);
  });

  test('each step on a line of its own, and on a terminal on one line rewritten in place', async () => {
    expect((await atDesk(['make', 'small'])).err).toBe('[1/2] build the design\n[2/2] write the files\n');
    const terminal = (await atDesk(['make', 'small'], { isTerminal: true })).err;
    expect(terminal).toBe('\r[1/2] build the design\u001b[K\r[2/2] write the files\u001b[K\n');
    const narrow = (await atDesk(['make', 'small'], { isTerminal: true, columns: 12 })).err;
    expect(narrow).toContain('\r[1/2] build\u001b[K');
  });

  test('a message after a broken step begins a line', async () => {
    const { err } = await atDesk(['make', 'small'], { isTerminal: true, fault: new Error('broken') });
    expect(err).toContain('build the design\u001b[K\ntenonwright: this is a fault');
  });
});

describe('help', () => {
  test('of the program lists the commands', async () => {
    for (const argv of [['--help'], ['-h']]) {
      const { out, status } = await atDesk(argv);
      expect(status).toBe(0);
      for (const command of ['list', 'describe <model>', 'make <model>', 'check <model>'])
        expect(out).toContain(`tenonwright ${command}`);
    }
  });

  test('of a model shows every parameter with default and range, in the units of the run', async () => {
    const { out, status } = await atDesk(['make', 'small', '--help', '--units', 'in'], { columns: 120 });
    expect(status).toBe(0);
    for (const name of Object.keys(smallModel.parameters.shape))
      expect(out).toContain(`--${name.replace(/[A-Z]/, (letter) => `-${letter.toLowerCase()}`)} `);
    expect(out).toMatch(/--seat-length +length of the seat \(5\.9055" to 23\.622"\) +\[default: 9\.0551"\]/);
    expect(out).toMatch(/a quarter of the seat length/);
    expect(out).toMatch(/--out /);
  });

  test('the version is the one of the package', async () => {
    const { default: pkg } = await import('../../package.json', { with: { type: 'json' } });
    expect((await atDesk(['--version'])).out).toBe(`${pkg.version}\n`);
  });
});

describe('models are the files of the models folder', () => {
  test('list names each with its title and summary', async () => {
    const { out, status } = await atDesk(['list'], { columns: 200 });
    expect(status).toBe(0);
    expect(out).toMatch(/^small +Small model +A model to read parameters with\.$/m);
    expect(out).toMatch(/^tray +Tray +/m);
  });

  test('describe shows a table that fits the width it has', async () => {
    for (const columns of [60, 80, 200]) {
      const { out } = await atDesk(['describe', 'small'], { columns });
      expect(Math.max(...out.split('\n').map((line) => line.length))).toBeLessThanOrEqual(columns);
      expect(out).toMatch(/^option +default +range +help$/m);
      expect(out).toMatch(/^--cheek-air +0\.05 mm +0 mm to 0\.5 mm +air on each/m);
    }
    expect((await atDesk(['describe', 'tray', '--units', 'in'])).out).toMatch(/--width +11\.811"/);
  });
});
