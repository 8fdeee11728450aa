import { describe, expect, test } from 'vitest';
import stoolModel from '../../models/stool.js';
import { type Model, optionName, readParameters } from '../../src/model/index.js';
import { builtInShop } from '../../src/shop/index.js';
import { STRENGTH_BASES } from '../../src/strength/index.js';
import { cureKey, curesOf, type Question, verdictOf, worthCuring } from '../../src/verdict/index.js';
import { plainJig } from '../shop/designs.js';

const stool = stoolModel as unknown as Model;

const question: Question = { model: stool, units: 'mm', shop: builtInShop('mm'), jig: plainJig() };

type Raw = Readonly<Record<string, string>>;

const strengthOf = async (raw: Raw) => {
  const { findings, refused } = await verdictOf(question, readParameters(stool, raw, 'mm'));
  expect(refused).toBeUndefined();
  return findings.filter(({ code, level }) => code in STRENGTH_BASES && level !== 'note');
};

describe('a fault of standing or strength is found, and the cure that is told ends it when it is typed', () => {
  test.each<[what: string, raw: Raw, code: string]>([
    ['feet inside the ends of the tread', { overhang: '45', rake: '8' }, 'edge-outside-feet'],
    ['feet inside its front', { setback: '20', taper: '4' }, 'edge-outside-feet'],
    ['a thin tread', { 'tread-length': '850', 'tread-thickness': '18', cutter: '6' }, 'board-gives'],
  ])('%s', async (_, raw, code) => {
    const values = readParameters(stool, raw, 'mm');
    const before = (await verdictOf(question, values)).findings;
    const found = before.filter((finding) => finding.code === code);
    expect(found.length).toBeGreaterThan(0);
    const given = Object.keys(stool.parameters.shape).filter((name) => optionName(name) in raw);
    const cures = await curesOf(question, values, before, given);
    for (const finding of found) {
      const cure = cures.get(cureKey(finding));
      expect(cure, finding.message).toBeDefined();
      const [option, value] = /^--([a-z-]+) (\S+)$/.exec(cure!.typed)!.slice(1) as [string, string];
      const after = await verdictOf(question, readParameters(stool, { ...raw, [option]: value }, 'mm'));
      const left = after.findings.filter(worthCuring).map(cureKey);
      expect(left).not.toContain(cureKey(finding));
      // how heavy a person is, or whether a child comes, is no cure
      expect(['person', 'child']).not.toContain(option);
    }
  });

  test.each<Raw>([
    {},
    { treads: '2' },
    { height: '160' },
    { height: '450' },
    { overhang: '30' },
    { setback: '20' },
    { treads: '2', height: '560' },
    { wood: 'sugar maple' },
    { person: '200' },
  ])('a sound stool of %o has none', async (raw) => {
    expect((await strengthOf(raw)).map(({ message }) => message)).toEqual([]);
  });
});
