import { afterAll, expect, test } from 'vitest';
import jig from '../../models/jig.js';
import stool from '../../models/stool.js';
import {
  type PlanContent,
  planSheets,
  planTemplates,
  type Sheet,
  strokesOf,
} from '../../src/drawing/index.js';
import { materialBlocks } from '../../src/drawing/plan/material-blocks.js';
import { withFigures } from '../../src/drawing/plan/plan-figures.js';
import type { OutputFile } from '../../src/files/folder/index.js';
import { withMade } from '../../src/files/made/made.js';
import { planFiles, planOf } from '../../src/files/plan/plan-files.js';
import type { Model } from '../../src/model/index.js';
import { readParameters } from '../../src/model/index.js';
import { SUPPLIES } from '../../src/node/index.js';
import {
  type Block,
  bearingPaper,
  boardMarks,
  builtInShop,
  figure,
  glueUpPaper,
  heading,
  setupPaper,
  toolsOf,
} from '../../src/shop/index.js';

interface Planned {
  readonly content: PlanContent;
  /** As of a design that failed a check; of the jig as it is. */
  readonly stamped: PlanContent;
  /** None of the jig: its pages alone are looked at. */
  readonly files: readonly OutputFile[];
  /** Names of the files when the appendix is put elsewhere or left out; of the jig, whose plan is short. */
  readonly named: Readonly<Record<'separate' | 'none', readonly string[]>>;
  /** Texts of every figure of the papers, as they are and with each heading's words replaced. */
  readonly figures: readonly string[];
  readonly renamed: readonly string[];
}

const known = new Map<Model, Promise<Planned>>();
afterAll(() => known.clear());

const plan = (model: Model): Promise<Planned> => {
  const made =
    known.get(model) ??
    withMade(
      {
        model,
        values: readParameters(model, {}, 'mm'),
        shop: builtInShop('mm'),
        jig: jig.build(readParameters(jig, {}, 'mm')),
        units: 'mm',
        format: 'binary',
        curves: 'arcs',
        force: true,
        version: '0.0.0',
        progress: () => {},
      },
      async (all) => {
        const content = planOf(all, {});
        const paper = { ...all.papers, design: all.solids.design };
        const blocks = [...setupPaper(paper), ...glueUpPaper(paper), ...materialBlocks(all.papers, 'mm')];
        const figuresIn = (of: readonly Block[]) =>
          withFigures(of, content.parts, content.picture, 200).flatMap((block) =>
            block.kind === 'drawn'
              ? strokesOf(block.draw([0, 0])).flatMap((one) => (one.kind === 'text' ? [one.text] : []))
              : [],
          );
        const names = async (appendix: 'separate' | 'none') =>
          model === JIG
            ? (await planFiles(all, await SUPPLIES.planFonts(), { appendix }, content))
                .map(({ path }) => path)
                .filter((path) => path.endsWith('.pdf'))
            : [];
        return {
          content,
          named: { separate: await names('separate'), none: await names('none') },
          stamped: model === JIG ? content : planOf({ ...all, papers: all.papers, failed: true }, {}),
          files:
            model === JIG
              ? []
              : await planFiles(
                  { ...all, papers: all.papers, failed: false },
                  await SUPPLIES.planFonts(),
                  {},
                  content,
                ),
          figures: figuresIn(blocks),
          renamed: figuresIn(
            blocks.map((block) => (block.kind === 'heading' ? heading('renamed', block.level) : block)),
          ),
        };
      },
    );
  known.set(model, made);
  return made;
};

const STOOL = stool as unknown as Model;
const JIG = jig as unknown as Model;

const textsOf = ({ entities }: Sheet): readonly string[] =>
  strokesOf(entities).flatMap((one) => (one.kind === 'text' ? [one.text] : []));

test('a plan goes with the day: the piece, wood, tools, boards, joints, cards, the order, the glue; the rest behind', async () => {
  const { content } = await plan(STOOL);
  const titles = planSheets(content, 'A4').entries.map(({ title }) => title);
  expect(titles).toEqual([
    'Cover',
    'The piece and the tools',
    'Wood and print test',
    'Boards',
    'Joints',
    'Set-up cards',
    'Order of work',
    'Tenons, glue-up and finish',
    'Appendix: the figures in full',
    'Template: tread',
    'Template: left side',
  ]);
});

test('an appendix put elsewhere is a file of its own a paper, one left out is none; the templates stand by themselves', async () => {
  const [{ named }, { files }] = [await plan(JIG), await plan(STOOL)];
  const ending = (path: string) => path.endsWith('.pdf');
  const whole = ['plan.a4.pdf', 'plan.letter.pdf', 'plan/templates.pdf'];
  expect(files.map(({ path }) => path).filter(ending)).toEqual(whole);
  expect(named.none).toEqual(whole);
  expect(named.separate.toSorted()).toEqual(
    [...whole, 'plan/appendix.a4.pdf', 'plan/appendix.letter.pdf'].toSorted(),
  );
});

test('a plan and its appendix apart hold every page of the whole once, and say where the rest is', async () => {
  const { content } = await plan(STOOL);
  const told = (part: 'whole' | 'appendix apart' | 'appendix left out' | 'appendix') =>
    planSheets(content, 'A4', part);
  const titles = (part: Parameters<typeof told>[0]) => told(part).entries.map(({ title }) => title);
  const behind = ['Appendix: the figures in full', 'Template: tread', 'Template: left side'];
  const whole = titles('whole');
  expect(titles('appendix')).toEqual(behind);
  expect(titles('appendix apart')).toEqual(whole.filter((title) => !behind.includes(title)));
  expect(titles('appendix left out')).toEqual(titles('appendix apart'));
  expect(told('appendix apart').sheets.length + told('appendix').sheets.length).toBe(
    told('whole').sheets.length,
  );
  const cover = (part: Parameters<typeof told>[0]) => textsOf(told(part).sheets[0]!).join(' ');
  expect(cover('appendix apart')).toContain('plan/appendix.a4.pdf');
  expect(cover('appendix left out')).toContain('plan/templates.pdf');
  expect(cover('appendix left out')).not.toContain('appendix.a4');
});

test('a plan without its appendix tells every board that is joined which arrises stay sharp', async () => {
  const { content } = await plan(STOOL);
  const { design } = content.parts.solids;
  const { sheets } = planSheets(content, 'A4', 'appendix left out');
  const page = sheets.map(textsOf).find((texts) => texts.includes('Arrises that stay sharp'))!;
  const after = page.slice(page.indexOf('Arrises that stay sharp')).join(' ');
  for (const { board } of design.boards) if (board.mortises.length > 0) expect(after).toContain(board.name);
  // where each joint has the other board
  for (const { a, b } of design.joints)
    for (const id of [a, b])
      expect(after).toContain(design.boards.find(({ board }) => board.id === id)!.board.name);
  expect(after).toContain('bevelled top end');
});

test('every board has its drawing, and boards that measure the same share one that names them all', async () => {
  for (const model of [STOOL, JIG]) {
    const { content } = await plan(model);
    const boards = content.sections.find(({ title }) => title === 'Boards')!;
    for (const { board } of content.parts.solids.design.boards)
      expect(
        boards.parts.filter(({ title }) => ` ${title},`.includes(` ${board.name},`)),
        board.id,
      ).toHaveLength(1);
  }
  const { content } = await plan(STOOL);
  const shared = content.sections.flatMap(({ parts }) => parts.map(({ title }) => title));
  expect(shared).toContain('LS left side, RS right side');
});

test('every sheet that names boards has a map of all of them, and darkens those it is about', async () => {
  for (const model of [STOOL, JIG]) {
    const { content } = await plan(model);
    const { design } = content.parts.solids;
    const marks = [...boardMarks(design.boards.map(({ board }) => board.id))];
    const colours = new Map<string, Set<string>>();
    for (const { title, drafts, parts } of content.sections.slice(1))
      drafts.forEach(({ id, entities }, page) => {
        const map = entities.filter(
          ({ tag }) => tag?.role === 'figure' && tag.said.startsWith('A map of the piece'),
        );
        const said = map.flatMap((one) => (one.kind === 'text' ? [one.text] : []));
        expect(said, id).toEqual(expect.arrayContaining(marks.map(([, mark]) => mark)));
        const own = parts.filter(({ at }) => at === page).map((one) => ` ${one.title},`);
        for (const [board, mark] of title === 'Boards' && own.length > 0 ? marks : []) {
          const isDrawn = own.some((one) => one.includes(` ${mark} `));
          const key = `${board} ${isDrawn ? 'drawn' : 'not'}`;
          const tones = map.flatMap((one) => (one.kind === 'tone' && one.part === board ? [one.colour] : []));
          colours.set(key, new Set([...(colours.get(key) ?? []), ...tones]));
        }
      });
    for (const [board] of marks) {
      const [dark, plain] = ['drawn', 'not'].map((way) =>
        [...(colours.get(`${board} ${way}`) ?? [])].map(lightness),
      );
      if (dark!.length > 0 && plain!.length > 0)
        expect(Math.max(...dark!), board).toBeLessThan(0.8 * Math.max(...plain!));
    }
  }
});

const lightness = (colour: string): number => Number.parseInt(colour.slice(3, 5), 16);

test('a plan of the stool has at most 16 pages before its appendix, and no page of a part but its last is under half full', async () => {
  const { content } = await plan(STOOL);
  expect(1 + content.sections.reduce((sum, { drafts }) => sum + drafts.length, 0)).toBeLessThanOrEqual(16);
  for (const of of [content, (await plan(JIG)).content])
    for (const { title, shares } of [...of.sections, ...of.appendix])
      expect(Math.min(1, ...shares.slice(0, -1)), title).toBeGreaterThanOrEqual(0.5);
});

test('a plan of the stool in inches keeps within the same 16 pages, and tells no mm of what it bears', async () => {
  const shop = builtInShop('in');
  const { pages, bears } = await withMade(
    {
      model: STOOL,
      values: readParameters(STOOL, {}, 'in'),
      shop,
      jig: jig.build(readParameters(jig, {}, 'in'), toolsOf(shop)),
      units: 'in',
      format: 'binary',
      curves: 'arcs',
      force: true,
      version: '0.0.0',
      progress: () => {},
    },
    async (all) => ({
      pages: 1 + planOf(all, {}).sections.reduce((sum, { drafts }) => sum + drafts.length, 0),
      bears: JSON.stringify(
        bearingPaper({ ...all.papers, design: all.solids.design }).filter(({ kind }) => kind === 'bars'),
      ),
    }),
  );
  expect(pages).toBeLessThanOrEqual(16);
  expect(bears).toContain('lbf');
  expect(bears).not.toMatch(/\d (mm|N|kg|MPa)\b|\b0\\"/);
});

test('what waits for a fit names, in the list of wood, the step it waits for', async () => {
  const { content } = await plan(STOOL);
  const fit = content.parts.papers.order.steps.find(({ kind }) => kind === 'dry fit')!;
  const later = content.parts.papers.order.steps.find(
    ({ board, kind }) => board === 'stretcher' && kind === 'mill',
  )!;
  expect(later.number).toBeGreaterThan(fit.number);
  const wood = planSheets(content, 'A4')
    .sheets.flatMap(textsOf)
    .flatMap((text) => text.match(/\bST: fit, step \d+/g) ?? []);
  expect(wood).toEqual([`ST: fit, step ${fit.number}`]);
});

test('every page carries the revision and its number of all, and no two sheets share a name', async () => {
  for (const model of [STOOL, JIG]) {
    const { content } = await plan(model);
    for (const paper of ['A4', 'Letter'] as const) {
      const { sheets } = planSheets(content, paper);
      expect(new Set(sheets.map(({ id }) => id)).size).toBe(sheets.length);
      sheets.forEach((sheet, i) => {
        const said = textsOf(sheet).join(' ');
        expect(said, sheet.id).toContain(content.parts.revision);
        expect(said, sheet.id).toContain(`${i + 1}/${sheets.length}`);
      });
    }
  }
});

test('A4 and Letter say the same on every page but for the name of the paper', async () => {
  const { content } = await plan(STOOL);
  const [a4, letter] = (['A4', 'Letter'] as const).map((paper) => planSheets(content, paper).sheets);
  const plain = (sheet: Sheet) =>
    textsOf(sheet)
      .map((text) => text.replace(/A4|Letter/g, 'paper'))
      .join('\n')
      .split(/\s+/);
  expect(letter!.map(({ id }) => id)).toEqual(a4!.map(({ id }) => id));
  a4!.forEach((sheet, i) => {
    // rows may break elsewhere where the paper's name is longer
    expect(plain(letter![i]!), sheet.id).toEqual(plain(sheet));
  });
});

test('a design that failed a check says so on every page, another on none', async () => {
  const { content, stamped } = await plan(STOOL);
  const warned = (sheet: Sheet) => textsOf(sheet).some((text) => text.startsWith('FAILED CHECKS'));
  const all = (of: PlanContent) => [...planSheets(of, 'A4').sheets, ...planTemplates(of)];
  expect(
    all(stamped)
      .filter((sheet) => !warned(sheet))
      .map(({ id }) => id),
  ).toEqual([]);
  expect(
    all(content)
      .filter(warned)
      .map(({ id }) => id),
  ).toEqual([]);
});

test('nothing on a page of a plan is cut short', async () => {
  for (const model of [STOOL, JIG]) {
    const { content } = await plan(model);
    for (const sheet of planSheets(content, 'A4').sheets)
      expect(
        textsOf(sheet).filter((text) => text.includes('…')),
        sheet.id,
      ).toEqual([]);
  }
});

test('the plan is written for both papers, the templates whole as one PDF and an SVG each, in mm', async () => {
  const { files, content } = await plan(STOOL);
  expect(files.map(({ path }) => path)).toEqual([
    'plan.a4.pdf',
    'plan.letter.pdf',
    'plan/templates.pdf',
    'plan/template-tread.mm.svg',
    'plan/template-left-side.mm.svg',
  ]);
  for (const sheet of planTemplates(content)) {
    const svg = new TextDecoder().decode(files.find(({ path }) => path === `plan/${sheet.id}.mm.svg`)!.bytes);
    expect(svg).toContain(
      `width="${sheet.width}mm" height="${sheet.height}mm" viewBox="0 0 ${sheet.width} ${sheet.height}"`,
    );
  }
});

test('a figure belongs to its card, step or stage by id: with every heading renamed all are still there', async () => {
  const { content, figures, renamed } = await plan(STOOL);
  const { cards, glueUp } = content.parts.papers;
  expect(renamed).toEqual(figures);
  expect(figures.filter((text) => text === 'near rail')).toHaveLength(
    cards.filter(({ nearRail }) => nearRail).length,
  );
  for (const { id } of glueUp.steps) expect(figures).toContain(id);
  for (const { number } of glueUp.stages) expect(figures).toContain(`clamps of stage ${number}`);
});

test('a paper that asks for the figure of a card that is not there is stopped', async () => {
  const { content } = await plan(STOOL);
  expect(() =>
    withFigures([figure({ of: 'card', card: 'S99' })], content.parts, content.picture, 200),
  ).toThrow('S99');
});
