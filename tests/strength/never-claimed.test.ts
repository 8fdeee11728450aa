import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import frame from '../../models/frame.js';
import jig from '../../models/jig.js';
import stool from '../../models/stool.js';
import { planSheets, strokesOf } from '../../src/drawing/index.js';
import { fileKinds } from '../../src/files/index.js';
import { designFiles, summaryText } from '../../src/files/jobs/index.js';
import { withMade } from '../../src/files/made/made.js';
import { planOf } from '../../src/files/plan/plan-files.js';
import { type Model, readParameters } from '../../src/model/index.js';
import { SUPPLIES } from '../../src/node/index.js';
import { type Ranges, rangePaper } from '../../src/range/index.js';
import { builtInShop } from '../../src/shop/index.js';

/** What no paper may say, unless it says that it does not. */
const CLAIMS: readonly RegExp[] = [
  /\bsafe (?:for|to|under|with|up to)\b/i,
  /\b(?:conforms?|complies|compliant|in accordance|meets (?:EN|ANSI|ASTM|ISO|BS|DIN)|according to EN|passes EN)\b/i,
  /\b(?:certified|certificate|approved|guarantee[ds]?|warranted|rated (?:for|to)|load rating)\b/i,
  /\b(?:suitable|fit|made|safe) for (?:a child|children)\b/i,
  /\b(?:withstands|holds|bears|carries) (?:a )?(?:jump|impact|blow|fall)/i,
  /\bwill (?:hold|bear|carry|last)\b/i,
];

/** A sentence that denies, or asks. */
const DENIES = /\b(?:not|no|nothing|never|none|whether|neither)\b/i;

/** The sentences of a text that claim. */
const claims = (text: string): readonly string[] =>
  text
    .split(/[\n|]|(?<=[.;:])\s/)
    .filter((sentence) => CLAIMS.some((claim) => claim.test(sentence)) && !DENIES.test(sentence));

const everyPaper = (
  model: Model,
  given: Readonly<Record<string, unknown>>,
  ranges: Ranges | undefined,
): Promise<string> =>
  withMade(
    {
      model,
      values: readParameters(model, given, 'mm'),
      shop: builtInShop('mm'),
      jig: jig.build(readParameters(jig, {}, 'mm')),
      units: 'mm',
      format: 'binary',
      curves: 'arcs',
      force: true,
      version: '0.0.0',
      progress: () => {},
      ...(ranges && { ranges }),
    },
    async (made) => {
      const { files } = await designFiles(made, fileKinds(['shop', 'page']), SUPPLIES);
      const texts = files
        .filter(({ path }) => /\.(?:md|csv|svg|html)$/.test(path))
        .map(({ bytes }) => new TextDecoder().decode(bytes).replace(/<script>[\s\S]*?<\/script>/g, ''))
        .map((text) => text.replace(/<[^>]*>/g, '\n'));
      const sheets = planSheets(planOf(made, {}), 'A4').sheets.map(({ entities }) =>
        // lines of one text are broken anywhere: joined again
        strokesOf(entities)
          .flatMap((one) => (one.kind === 'text' ? [one.text] : []))
          // an empty field of the title block, for a signature
          .filter((one) => one !== 'approved')
          .join(' '),
      );
      const summary = summaryText(made, [], true);
      const about = ranges && JSON.stringify(rangePaper(ranges, made.say));
      return [...texts, ...sheets, summary, about].join('\n');
    },
  );

/** The ranges the stool is shipped with. */
const ranges: Ranges = JSON.parse(
  readFileSync(new URL('../../shared/ranges/stool.json', import.meta.url), 'utf8'),
);

const MODELS = { stool, frame, jig } as unknown as Readonly<Record<string, Model>>;

test.each<[string, Readonly<Record<string, unknown>>]>([
  ['stool', { treads: 2, child: 'yes', person: '200 kg' }],
  ['frame', {}],
  ['jig', {}],
])('no paper of a %s reads as an approval', async (name, given) => {
  const text = await everyPaper(MODELS[name]!, given, name === 'stool' ? ranges : undefined);
  expect(text.length).toBeGreaterThan(10_000);
  expect(text).toContain('what it bears');
  // on the page, in the plan and in the paper of the ranges
  const times = text.split('Nothing is claimed of sizes that were not tried').length - 1;
  expect(times).toBe(name === 'stool' ? 3 : 0);
  expect(claims(text)).toEqual([]);
  // what nobody worked out is told, and that a load is tried first
  for (const told of ['Jumping, falls and blows', 'Knots, checks', 'licensed engineer decide'])
    expect(text).toContain(told);
});

test('a claim is seen wherever it stands, and a denial is none', () => {
  for (const claim of [
    'This stool is safe for 150 kg.',
    'It conforms to EN 14183.',
    'Certified strength.',
    'Suitable for children.',
    'The tread will hold a grown person.',
    'Rated for 110 kg',
  ])
    expect(claims(`Cut the mortise. ${claim} Glue it.`), claim).toHaveLength(1);
  expect(claims('Not certified: test it. Nothing here says that it is safe for anyone.')).toEqual([]);
});
