import { nearest } from '../../model/index.js';
import { keys, listed, must, pair, phrase } from './entries.js';
import { didYouMeanWord, Problem, type Problems, problemWith } from './problem.js';
import type { Place } from './told.js';
import type {
  BoardEntry,
  DimensionLine,
  Entry,
  Keys,
  MustLine,
  Phrase,
  PieceTree,
  WorkedOutLine,
} from './tree.js';
import { yamlTree } from './yaml-tree.js';

const KNOWN = [
  'design',
  'title',
  'about',
  'notes',
  'units',
  'wood',
  'piece',
  'dimensions',
  'worked out',
  'must',
  'boards',
  'joints',
  'held',
  'used by',
] as const;

type Section = (typeof KNOWN)[number];

/** The most of each there may be: several times what a large piece has. */
const MOST: Readonly<Partial<Record<Section, number>>> = {
  dimensions: 60,
  'worked out': 60,
  must: 60,
  boards: 200,
  joints: 500,
  held: 500,
};

/**
 * A piece as its file tells it; nothing is worked out yet.
 *
 * @param problems takes what is wrong; the tree may lack it
 * @returns nothing when so much is missing that nothing can be made of it
 */
export function readPiece(text: string, problems: Problems): PieceTree | undefined {
  const root = yamlTree(text, problems);
  if (root === undefined) return undefined;
  const known = meantKeys(root, problems);
  const section = new Sections(known, problems);
  const design = section.phrase('design', "write 'design: a-name', letters, digits and hyphens");
  const wood = section.phrase('wood', "write 'wood: white oak', or another of the table");
  const piece = section.box();
  const units = section.units();
  if (design && !/^[a-z][a-z0-9]*(-[a-z0-9]+)*$/.test(design.value))
    problems.add(
      problemWith(
        design,
        `'${design.value}' cannot name a folder`,
        `write small letters, digits and hyphens${hyphenated(design.value)}`,
      ),
    );
  const tree = {
    title: section.optional('title') ?? (design && titleOf(design)),
    about: section.optional('about'),
    notes: section.notes(),
    dimensions: section.each(
      'dimensions',
      (name, entry): DimensionLine => ({ name, said: phrase(entry, '800 from 400 to 1000; what it is') }),
    ),
    workedOut: section.each(
      'worked out',
      (name, entry): WorkedOutLine => ({ name, formula: phrase(entry, 'a formula, like leg - 10') }),
    ),
    must: section.musts(),
    boards: section.each(
      'boards',
      (name, entry): BoardEntry => ({ name, keys: keys(entry, `${name.value}: { grain: left-right, … }`) }),
    ),
    joints: section.each('joints', pair),
    held: section.each('held', pair),
    usedBy: section.usedBy(),
  };
  const boards = known.get('boards');
  if (boards === undefined || boards.said.value === undefined)
    problems.add(
      new Problem(
        boards?.at ?? START,
        0,
        'the piece has no boards',
        "tell them under 'boards:', in the order you would build",
      ),
    );
  if (!design || !wood || !piece || !units || !tree.title) return undefined;
  const { about, title, usedBy, ...others } = tree;
  return {
    design,
    wood,
    piece,
    units,
    title,
    ...(about && { about }),
    ...(usedBy && { usedBy }),
    ...others,
  };
}

/** A key that is nearly one of a piece's is told, and read as that one. */
function meantKeys(root: Keys, problems: Problems): Keys {
  const known = new Map<string, Entry>();
  for (const [key, entry] of root) {
    const meant = (KNOWN as readonly string[]).includes(key) ? key : nearest(key, KNOWN);
    if (meant !== key)
      problems.add(new Problem(entry.at, key.length, `a piece has no '${key}'`, didYouMeanWord(key, KNOWN)));
    if (meant !== undefined && (meant === key || !root.has(meant))) known.set(meant, entry);
  }
  return known;
}

/** Where what is missing is told. */
const START: Place = { line: 1, column: 1 };

class Sections {
  constructor(
    private readonly root: Keys,
    private readonly problems: Problems,
  ) {}

  phrase(key: Section, remedy: string): Phrase | undefined {
    return this.problems.during(() => {
      const entry = this.root.get(key);
      if (!entry) throw new Problem(START, 0, `the piece does not say its '${key}'`, remedy);
      return phrase(entry, remedy);
    });
  }

  optional(key: Section): Phrase | undefined {
    const entry = this.root.get(key);
    return entry && this.problems.during(() => phrase(entry, `write words after '${key}:'`));
  }

  notes(): readonly Phrase[] {
    const entry = this.root.get('notes');
    const wanted = 'a sentence, or a list of sentences';
    return (
      (entry &&
        this.problems.during(() => listed(entry).map((said) => phrase({ at: entry.at, said }, wanted)))) ??
      []
    );
  }

  units(): 'mm' | 'in' | undefined {
    const told = this.optional('units');
    if (!told) return this.root.has('units') ? undefined : 'mm';
    if (told.value === 'mm' || told.value === 'in') return told.value;
    this.problems.add(
      problemWith(told, `'${told.value}' is neither mm nor in`, 'write units: mm, or units: in'),
    );
    return undefined;
  }

  box(): PieceTree['piece'] | undefined {
    return this.problems.during(() => {
      const entry = this.root.get('piece');
      const form = 'piece: [width, depth, height]';
      if (!entry) throw new Problem(START, 0, 'the piece does not say the box it fills', `write '${form}'`);
      const all = listed(entry).map((said) => phrase({ at: entry.at, said }, form));
      if (all.length !== 3)
        throw new Problem(
          entry.said.at,
          1,
          `'piece' has three sizes, left to right, front to back, floor to top; here are ${all.length}`,
          `write '${form}'`,
        );
      return all as unknown as PieceTree['piece'];
    });
  }

  usedBy(): Keys | undefined {
    const entry = this.root.get('used by');
    return entry && this.problems.during(() => keys(entry, 'used by: { heaviest: 110 kg, children: yes }'));
  }

  /** Every key of a section, as many as there may be. */
  each<T>(section: Section, read: (name: Phrase, entry: Entry) => T): readonly T[] {
    const entry = this.root.get(section);
    if (!entry || entry.said.value === undefined) return [];
    const all = this.problems.during(() => keys(entry, `a key a line below '${section}:'`));
    if (!all) return [];
    this.#few(section, entry.at, all.size);
    return [...all].slice(0, MOST[section]).flatMap(([name, one]) => {
      const found = this.problems.during(() => read({ value: name, at: one.at }, one));
      return found === undefined ? [] : [found];
    });
  }

  musts(): readonly MustLine[] {
    const entry = this.root.get('must');
    if (!entry || entry.said.value === undefined) return [];
    const all = listed(entry);
    this.#few('must', entry.at, all.length);
    return all.slice(0, MOST.must).flatMap((said) => this.problems.during(() => must(said)) ?? []);
  }

  #few(section: Section, at: Place, count: number): void {
    const most = MOST[section]!;
    if (count > most)
      this.problems.add(
        new Problem(
          at,
          section.length,
          `'${section}' holds ${count} entries, ${most} is the limit`,
          'tell a smaller piece',
        ),
      );
  }
}

/** `Side Table` could be `side-table`. */
function hyphenated(name: string): string {
  const plain = name
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^[-0-9]+|-+$/g, '');
  return plain === '' ? '' : `, like ${plain}`;
}

/** `side-table` is `Side table` where no title is told. */
const titleOf = ({ value, at }: Phrase): Phrase => ({
  value: value.charAt(0).toUpperCase() + value.slice(1).replaceAll('-', ' '),
  at,
});
