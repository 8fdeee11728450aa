import { describe, expect, test } from 'vitest';
import { InputError } from '../../src/errors.js';
import { atDesk, finding } from './desk.js';

describe('exit status', () => {
  test('is 0 when a design is made and its findings are no errors', async () => {
    const ran = await atDesk(['make', 'small'], { findings: [finding('warning'), finding('note')] });
    expect(ran.status).toBe(0);
    expect(ran.asked.map(([which]) => which)).toEqual(['make']);
  });

  test('is 3 when the design has error findings, with --force as well', async () => {
    for (const argv of [
      ['make', 'small'],
      ['make', 'small', '--force'],
      ['check', 'small'],
    ])
      expect((await atDesk(argv, { findings: [finding('error')] })).status).toBe(3);
  });

  test('is 2 for bad input, with the message alone', async () => {
    const fault = new InputError('too-tight', 'the sides do not fit the seat: make the seat longer');
    for (const ran of [
      await atDesk(['make', 'small', '--seat-length', '9']),
      await atDesk(['make', 'small'], { fault }),
    ]) {
      expect(ran.status).toBe(2);
      expect(ran.err).toMatch(/tenonwright: /);
      expect(ran.err).not.toMatch(/\bat .*:\d+:\d+/);
      expect(ran.out).toBe('');
    }
  });

  test('is 1 for a fault of the program, which is called one and shows where it happened', async () => {
    const ran = await atDesk(['make', 'small'], { fault: new TypeError('no such seat') });
    expect(ran.status).toBe(1);
    expect(ran.err).toMatch(/fault in the program/);
    expect(ran.err).toMatch(/TypeError: no such seat\n\s+at /);
  });
});

describe('what cannot be understood is refused with what was likely meant', () => {
  test.each([
    [['mkae', 'small'], /no command 'mkae': did you mean make\?/],
    [['make', 'smal'], /no model 'smal': did you mean small\?/],
    [['describe', 'trai'], /no model 'trai': did you mean tray\?/],
    [['make', '../small'], /no model '..\/small'/],
    [['make', 'small', '--seat-legnth', '300'], /no option --seat-legnth: did you mean --seat-length\?/],
    [['make', 'small', '--seat-legnth=300'], /did you mean --seat-length\?/],
    [['check', 'small', '--forse'], /no option --forse/],
    [['make', 'small', '--outt', 'x'], /did you mean --out\?/],
    [['make', 'small', '-x'], /no option -x/],
    [['make', 'tray', '--splay', '3'], /no option --splay/],
    [['list', 'small'], /'small' belongs to no option of list/],
    [['make', 'small', '--seat-length', '9', '1/16'], /'1\/16' belongs to no option of make.*in quotes/],
    [['make', 'small', '--seat-length'], /--seat-length has no value/],
    [['make', 'small', '--seat-length', '--force'], /--seat-length has no value/],
    [['make', 'small', '--out', '--forse'], /--out has no value, and --forse looks like another option/],
    [['make', 'small', '--out', '-h'], /--out has no value/],
    [['make', 'small', '--out-x', '3'], /no option --out-x: did you mean --out\?/],
    [['make', 'small', '--out.x', '3'], /no option --out\.x/],
    [['make', 'small', '-3'], /no option -3/],
    [['make', 'small', '--', '--force'], /'--force' belongs to no option of make/],
    [['make', 'small', '--no-wedged', '3'], /'3' belongs to no option of make/],
    [['make', 'small', '--wedged', 'perhaps'], /'perhaps' belongs to no option of make/],
    [['make', 'small', '--wedged=perhaps'], /wedged is 'perhaps'/],
    [['make', 'small', '--splay', '3', '--splay=4'], /--splay is given twice/],
    [['make', 'small', '--wedged', '--no-wedged'], /--wedged is given twice/],
    [['make', 'small', '--wedged=yes', '--wedged'], /--wedged is given twice/],
    [['make', 'small', '--seatLength', '300', '--seat-length=310'], /--seat-length is given twice/],
    [['make', 'small', '--no-splay'], /no option --no-splay/],
    [['make', 'small', '--format', 'text'], /format is 'text'; it must be binary or ascii/],
    [['make', 'small', '--units', 'ft'], /units is 'ft'; it must be mm or in/],
    [['make', 'small', '--bush', '-16'], /bush cannot be read: '-16' is negative where a size is meant/],
    [['make', 'small', '--only', 'stl,,dxf'], /--only is 'stl,,dxf'/],
    [['mend', 'small'], /no command 'mend'/],
    [['make', 'small', '--edge', 'rond'], /edge is 'rond'; it must be round or square: did you mean round\?/],
    [['make', 'small', '--seat-length', '-230'], /'-230' is negative where a size is meant/],
    [['make'], /make needs a model/],
    [[], /no command is given/],
  ])('%j', async (argv, message) => {
    const ran = await atDesk(argv);
    expect(ran.err).toMatch(message);
    expect(ran.status).toBe(2);
    expect(ran.asked).toEqual([]);
  });

  test('all bad parameters are told in one run', async () => {
    const ran = await atDesk(['make', 'small', '--seat-length', '9', '--tenons', 'two']);
    expect(ran.err.trimEnd().split('\n')).toHaveLength(2);
  });
});

describe('values reach the pipeline as they were written', () => {
  const valuesOf = async (...options: string[]) => {
    const ran = await atDesk(['check', 'small', ...options]);
    expect(ran.err).not.toMatch(/tenonwright:/);
    return ran.asked[0]![1].values;
  };

  test.each([
    [['--splay', '-3.5'], 'splay', -3.5],
    [['--splay', '-3.5°'], 'splay', -3.5],
    [['--splay=-½'], 'splay', -0.5],
    [['--splay', '-½'], 'splay', -0.5],
    [['--splay', '-.5°'], 'splay', -0.5],
    [['--seat-length', '9-1/16"'], 'seatLength', 230.1875],
    [['--seat-length', '9 1/16 in'], 'seatLength', 230.1875],
    [['--seat-length=1\' 2-1/2"'], 'seatLength', 368.3],
    [['--seatLength', '300'], 'seatLength', 300],
    [['--seat-length', '9 1/16', '--units', 'in'], 'seatLength', 230.1875],
    [['--units=in', '--seat-length', '300mm'], 'seatLength', 300],
    [['--tenons', '03'], 'tenons', 3],
    [['--species', '1e3'], 'species', '1e3'],
    [['--species', 'a=b'], 'species', 'a=b'],
    [['--species', 'true'], 'species', 'true'],
    [['--species', '"ash"'], 'species', '"ash"'],
    [['--species="ash"'], 'species', '"ash"'],
    [['-species', 'ash'], 'species', 'ash'],
    [['--wedged'], 'wedged', true],
    [['--wedged', 'no'], 'wedged', false],
    [['--wedged=yes'], 'wedged', true],
    [['--wedged=no'], 'wedged', false],
    [['--wedged', 'OFF'], 'wedged', false],
    [['--wedged', '--splay', '3'], 'wedged', true],
    [['--no-wedged'], 'wedged', false],
  ] as const)('%j', async (options, name, expected) => {
    expect((await valuesOf(...options))[name]).toBe(expected);
  });

  test('the options of make reach it, with lengths in mm and paths from the folder of the person', async () => {
    const argv = ['make', 'small', '--out', 'bench', '--only', 'stl, DXF', '--format', 'ascii'];
    const more = ['--curves', 'segments', '--bush', '5/8', '--units', 'in', '--force'];
    const ran = await atDesk([...argv, ...more], { cwd: '/home/joiner' });
    expect(ran.asked[0]![1]).toMatchObject({
      out: '/home/joiner/bench',
      only: ['stl', 'dxf'],
      format: 'ascii',
      curves: 'segments',
      bush: 15.875,
      units: 'in',
      force: true,
    });
  });

  test('what is not asked for is left to the usual', async () => {
    const [[, request]] = (await atDesk(['make', 'small'], { cwd: '/home/joiner' })).asked as [
      [string, object],
    ];
    expect(request).toMatchObject({
      out: '/home/joiner/out',
      format: 'binary',
      curves: 'arcs',
      units: 'mm',
      force: false,
    });
    expect(request).not.toHaveProperty('only');
    expect(request).not.toHaveProperty('bush');
  });
});

test('an error that comes from the design says its lengths in the units of the run', async () => {
  const fault = new InputError('too-tight', (say) => `the seat is ${say.length(63.5)} long: lengthen it`);
  const told = async (...more: string[]) => (await atDesk(['make', 'small', ...more], { fault })).err;
  expect(await told()).toContain('tenonwright: the seat is 63.5 mm long');
  // 63.5 / 25.4 = 2.5
  expect(await told('--units', 'in')).toContain('tenonwright: the seat is 2-1/2" long');
});

test('the word help is as good as the option', async () => {
  for (const rest of [[], ['make', 'small']]) {
    const ran = await atDesk(['help', ...rest]);
    expect(ran).toEqual(await atDesk([...rest, '--help']));
    expect(ran.status).toBe(0);
  }
});

test('a flag takes no word but yes or no, so the model may stand after it', async () => {
  for (const [options, force] of [
    [['--force'], true],
    [['--no-force'], false],
    [['--force', 'no'], false],
    [['--force=yes', '--out', '-'], true],
  ] as const)
    for (const argv of [
      ['make', ...options, 'small'],
      [...options, 'make', 'small'],
      ['make', 'small', ...options],
      ['make', ...options, '--', 'small'],
    ])
      expect((await atDesk(argv)).asked).toMatchObject([['make', { force }]]);
});

test('a bare length is in inches, in whatever letters the units are written', async () => {
  // 5/8 in = 0.625 * 25.4 mm
  const { asked } = await atDesk(['make', 'small', '--units', 'IN', '--bush', '5/8', '--seat-length', '12']);
  expect(asked).toMatchObject([['make', { bush: 15.875, units: 'in', values: { seatLength: 304.8 } }]]);
});

test('a word to choose may be written in capitals', async () => {
  const { asked } = await atDesk(['make', 'small', '--edge', 'SQUARE']);
  expect(asked.map(([, { values }]) => values.edge)).toEqual(['square']);
});
