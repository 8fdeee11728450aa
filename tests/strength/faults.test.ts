import { describe, expect, test } from 'vitest';
import stoolModel from '../../models/stool.js';
import { type Model, optionName, readParameters } from '../../src/model/index.js';
import { builtInShop, type Shop, toolsOf } from '../../src/shop/index.js';
import { STRENGTH_BASES } from '../../src/strength/index.js';
import { cureKey, curesOf, type Question, verdictOf, worthCuring } from '../../src/verdict/index.js';
import { MANY, many } from '../properties/seed.js';
import { plainJig } from '../shop/designs.js';
import { shelfModel } from './shelf-model.js';
import { topModel } from './top-model.js';

const stool = stoolModel as unknown as Model;

/** The stool with some of its sizes alone, all others as they come: a cure is among these. */
const of = (...names: readonly string[]): Model => withSizes(names);

/** As that, of other sizes that stay. */
const withSizes = (names: readonly string[], others: Raw = {}): Model => ({
  ...stool,
  parameters: stool.parameters.pick(Object.fromEntries(names.map((name) => [name, true]))),
  complete: (values, tools) => {
    const whole = stool.complete({ ...readParameters(stool, others, 'mm'), ...values }, tools);
    return Object.fromEntries(names.map((name) => [name, whole[name]]));
  },
  build: (values, tools) => stool.build({ ...readParameters(stool, others, 'mm'), ...values }, tools),
});

const question: Question = { model: stool, units: 'mm', shop: builtInShop('mm'), jig: plainJig() };

type Raw = Readonly<Record<string, string>>;

const strengthOf = async (raw: Raw) => {
  const { findings, refused } = await verdictOf(question, readParameters(stool, raw, 'mm'));
  expect(refused).toBeUndefined();
  return findings.filter(({ code, level }) => code in STRENGTH_BASES && level !== 'note');
};

const PINE = 'eastern white pine';

/** The stool, sat upon instead of stood on. */
const seat: Model = {
  ...stool,
  build: (values, tools) => ({
    ...stool.build(values, tools),
    uses: [{ board: 'tread', use: 'seat' }],
  }),
};

/** The shelf of one size. */
const woodOfShelf: Model = {
  ...shelfModel,
  parameters: shelfModel.parameters.pick({ wood: true }),
  build: ({ wood }, tools) => shelfModel.build({ wood, span: 1000, thickness: 24 }, tools),
};

describe('a fault of standing or strength is found, and the cure that is told ends it when it is typed', () => {
  test.each<[what: string, model: Model, raw: Raw, code: string]>([
    [
      'feet inside the ends of the tread',
      of('overhang', 'rake'),
      { overhang: '45', rake: '8' },
      'edge-outside-feet',
    ],
    ['feet inside its front', of('setback', 'taper'), { setback: '20', taper: '4' }, 'edge-outside-feet'],
    [
      'a thin tread',
      // a cure is looked for among every size that is given: of a long stool of pine its thickness alone
      withSizes(
        MANY ? ['treadLength', 'treadThickness', 'cutter', 'wood'] : ['treadThickness', 'cutter'],
        MANY ? {} : { 'tread-length': '900', wood: PINE },
      ),
      {
        ...(MANY && { 'tread-length': '900', wood: PINE }),
        'tread-thickness': '18',
        cutter: '6',
      },
      'board-breaks',
    ],
    [
      'upright sides of pine',
      of('height', 'rake', 'stretcherWidth', 'wood'),
      { height: '500', rake: '0', wood: PINE },
      'joint-racked',
    ],
    [
      'thin sides of cedar',
      of('height', 'sideThickness', 'wood'),
      { height: '500', 'side-thickness': '18', wood: 'western red cedar' },
      'board-crushed',
    ],
    // raked sides push apart: of the weakest wood the stretcher's joints are warned of, of ash they are not
    ['a stool of pine', of('rake', 'stretcherWidth', 'wood'), { wood: PINE }, 'joint-pulled'],
    ['a seat far beyond its feet', seat, { overhang: '110', rake: '0' }, 'tips-sideways'],
    ['a shelf too long', shelfModel, { span: '1500', thickness: '18' }, 'shelf-sags'],
    ['a shelf whose wood alone may be chosen', woodOfShelf, {}, 'shelf-sags'],
    ['a top glued across its grain', topModel, { hold: 'glue' }, 'held-across-grain'],
    ['buttons without travel', topModel, { travel: '0.3' }, 'no-room-to-move'],
    ['a tread as thin as a board of a box', topModel, { use: 'step', thickness: '7' }, 'board-shears'],
    ['tenons that reach the bottom', of('endGap', 'height'), { 'end-gap': '0' }, 'tenon-meets-bottom'],
  ])('%s', async (_, model, raw, code) => {
    const asked = { ...question, model };
    const values = readParameters(model, raw, 'mm');
    const before = (await verdictOf(asked, values)).findings;
    const found = before.filter((finding) => finding.code === code);
    expect(found.length).toBeGreaterThan(0);
    const given = Object.keys(model.parameters.shape).filter((name) => optionName(name) in raw);
    const cures = await curesOf(asked, values, before, given);
    for (const finding of new Map(found.map((one) => [cureKey(one), one])).values()) {
      const cure = cures.get(cureKey(finding));
      expect(cure, finding.message).toBeDefined();
      const [option, value] = /^--([a-z-]+) '?(.+?)'?$/.exec(cure!.typed)!.slice(1) as [string, string];
      const after = await verdictOf(asked, readParameters(model, { ...raw, [option]: value }, 'mm'));
      const left = after.findings.filter(worthCuring).map(cureKey);
      expect(left).not.toContain(cureKey(finding));
      // how heavy a person is, or whether a child comes, is no cure
      expect(['person', 'child']).not.toContain(option);
    }
  });

  const sound: readonly Raw[] = [
    {},
    { treads: '2', height: '560' },
    { height: '700' },
    { height: '600', wood: 'northern red oak' },
    { overhang: '30' },
    { person: '200' },
    // sizes that lie between those
    { treads: '2' },
    { height: '160' },
    { height: '600' },
    { setback: '20' },
  ];
  test.each(sound.slice(0, many(6, sound.length)))('a sound stool of %o has none', async (raw) => {
    expect((await strengthOf(raw)).map(({ message }) => message)).toEqual([]);
  });

  test('a top held by buttons has the room of the place it will stand in, and a shed asks for more than a heated room', async () => {
    const room = async (place: NonNullable<Shop['place']>) => {
      const shop = { ...builtInShop('mm'), place };
      const values = readParameters(topModel, {}, 'mm');
      const { findings } = await verdictOf({ ...question, shop, model: topModel }, values);
      expect(findings.filter(({ code }) => code === 'no-room-to-move')).toEqual([]);
      return topModel.build(values, toolsOf(shop)).fastenings![0]!.travel;
    };
    const [heated, shed] = [await room({}), await room({ climate: 'unheated-shed' })];
    // 6 and 8.4 points of moisture between the driest and the dampest
    expect(shed / heated).toBeCloseTo(8.4 / 6, 6);
  });
});
