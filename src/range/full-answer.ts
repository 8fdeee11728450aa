import { sha256 } from '@noble/hashes/sha2';
import { bytesToHex, utf8ToBytes } from '@noble/hashes/utils';
import type { Design } from '../assembly/index.js';
import { TenonwrightError } from '../errors.js';
import { speaker } from '../length/index.js';
import { labelOf, parameterMeta, printValue } from '../model/index.js';
import { designFor, toolsOf } from '../shop/index.js';
import {
  cureKey,
  cureOfRefusal,
  curesOf,
  type Question,
  quickVerdictOf,
  type Values,
  type Verdict,
  verdictOf,
} from '../verdict/index.js';
import type { Answer, At, Glance, Judge } from './answer.js';
import type { Dimension } from './dimension.js';

/** Full verdicts on a design, with dimensions moved from the chosen values. */
export const judgeOf =
  (question: Question, chosen: Values): Judge =>
  async (at: At) =>
    answerOf(question, await verdictOf(question, { ...chosen, ...at }));

function answerOf({ units }: Question, { findings, refused }: Verdict): Answer {
  if (refused) return { sound: false, code: refused.code, text: refused.explain(speaker(units)) };
  const error = findings.find(({ level }) => level === 'error');
  return error
    ? { sound: false, code: error.code, text: `${error.message}: ${error.remedy}` }
    : { sound: true };
}

/** A judge that tells of what is not sound one other dimension or choice that was changed and makes it so. It takes some seconds. */
export const curingJudgeOf =
  (question: Question, chosen: Values): Judge =>
  async (at: At) => {
    const values = { ...chosen, ...at };
    const verdict = await verdictOf(question, values);
    const answer = answerOf(question, verdict);
    if (answer.sound) return answer;
    const held = Object.keys(at);
    const worst = verdict.findings.find(({ level }) => level === 'error');
    const cure = worst
      ? (await curesOf(question, values, verdict.findings, [], held)).get(cureKey(worst))
      : await cureOfRefusal(question, values, [], held);
    if (!cure) return { ...answer, cure: '' };
    const { parameter, value } = cure;
    // what ends the worst error may leave others
    const after = await judgeOf(question, { ...values, [parameter]: value })({});
    const meta = parameterMeta(parameter, question.model.parameters.shape[parameter]!);
    return {
      ...answer,
      cure: after.sound ? `${labelOf(parameter, meta)} ${printValue(meta, value, question.units)}` : '',
    };
  };

/** What the data of a design alone say: why it cannot be built, or the codes of its errors and what is left open. */
export const glanceOf =
  (question: Question, chosen: Values): Glance =>
  (at: At): string => {
    const { findings, open, refused } = quickVerdictOf(question, { ...chosen, ...at });
    if (refused) return `refused: ${refused.code}`;
    const codes = findings.filter(({ level }) => level === 'error').map(({ code }) => code);
    return [...new Set([...codes, ...open])].toSorted().join('\n');
  };

/** Places in a stated range at which a design is built to see whether a dimension does anything at all. */
const LOOKS = 8;

/** Whether a dimension changes the design anywhere in its stated range; where it cannot be built, it does. */
export function isUsed(
  { model, shop }: Question,
  chosen: Values,
  { name, least, most, kind }: Dimension,
): boolean {
  const told = (values: Values): string | undefined => {
    try {
      return JSON.stringify(model.build(values, toolsOf(shop)));
    } catch (error) {
      if (error instanceof TenonwrightError) return undefined;
      throw error;
    }
  };
  const before = told(chosen);
  return Array.from({ length: LOOKS + 1 }, (_, i) => least + ((most - least) * i) / LOOKS).some(
    (value) => told({ ...chosen, [name]: kind === 'count' ? Math.round(value) : value }) !== before,
  );
}

/**
 * Figures of one design differ in their last digits from engine to engine, and it is the same design: told to 1 µm. What people
 * choose, tenths of mm and 64ths of an inch, stays clear of where one micrometre ends and the next begins.
 */
const settledText = (design: Design): string =>
  JSON.stringify(design, (_, value: unknown) =>
    typeof value === 'number' ? Math.round(1000 * value + 0.19) : value,
  );

/** Names everything a verdict depends on beside the moved dimensions: a hash, hexadecimal, the same on every engine. */
export const aboutOf = (
  { model, shop, jig, units, bush }: Question,
  chosen: Values,
  version: string,
): string => {
  // another name for the same shop changes no verdict
  const { name: _, ...toldOfShop } = shop;
  return bytesToHex(
    sha256(
      utf8ToBytes(
        JSON.stringify([
          version,
          model.name,
          model.told,
          chosen,
          settledText(designFor(model, chosen, shop)),
          toldOfShop,
          settledText(jig),
          units,
          bush,
        ]),
      ),
    ),
  );
};
