import {
  type Alias,
  isAlias,
  isMap,
  isScalar,
  isSeq,
  LineCounter,
  type ParsedNode,
  parseDocument,
  type Scalar,
} from 'yaml';
import { Problem, type Problems } from './problem.js';
import type { Place } from './told.js';
import type { Entry, Keys, Said } from './tree.js';
import { yamlProblem } from './yaml-problem.js';

/** The most a file may hold, bytes: twenty times what a large piece needs. */
export const MOST_BYTES = 64 * 1024;

/** The most keys or lists within each other; a piece has five. */
const DEEPEST = 8;

/**
 * A file as keys, every word with its place. YAML is read as plain data: all words stay words, and what could refer, repeat or name a
 * kind (anchors, aliases, tags, merges) is refused.
 *
 * @param problems takes what is wrong
 * @returns nothing when the file cannot be read at all
 */
export function yamlTree(text: string, problems: Problems): Keys | undefined {
  return problems.during(() => {
    const bytes = new TextEncoder().encode(text).length;
    if (bytes > MOST_BYTES)
      throw new Problem(
        START,
        0,
        `the file holds ${Math.ceil(bytes / 1024)} KB, ${MOST_BYTES / 1024} KB is the limit`,
        'tell one piece in one file',
      );
    const lines = new LineCounter();
    const document = parseDocument(text, {
      schema: 'failsafe',
      // told in our words, and without comparing every key with every other
      uniqueKeys: false,
      merge: false,
      lineCounter: lines,
      prettyErrors: false,
    });
    const at = (offset: number): Place => {
      const { line, col } = lines.linePos(offset);
      return { line, column: col };
    };
    const [first] = document.errors;
    if (first !== undefined) throw yamlProblem(first, text, at);
    const { contents } = document;
    if (!isMap(contents))
      throw new Problem(
        contents ? at(contents.range![0]) : START,
        1,
        'this is no piece',
        "begin with 'design: a-name'; tenonwright new writes a file to start from",
      );
    return new Reader(at, problems).keys(contents as ParsedMap, 0);
  });
}

const START: Place = { line: 1, column: 1 };

type ParsedMap = Extract<ParsedNode, { items: { key: unknown }[] }>;

class Reader {
  constructor(
    private readonly at: (offset: number) => Place,
    private readonly problems: Problems,
  ) {}

  /** What is wrong below one key leaves its neighbours readable; the key is told to hold nothing then. */
  keys(map: ParsedMap, depth: number): Keys {
    this.#plain(map, depth);
    const found = new Map<string, Entry>();
    for (const { key, value } of map.items) {
      this.problems.during(() => {
        const { name, place } = this.#key(key);
        const before = found.get(name);
        if (before)
          throw new Problem(
            place,
            name.length,
            `'${name}' is told twice, first on line ${before.at.line}`,
            'leave one out',
          );
        if (value === null) throw alone(name, place);
        found.set(name, { at: place, said: { value: undefined, at: place } });
        found.set(name, { at: place, said: this.#said(value, place, depth + 1) });
      });
    }
    return found;
  }

  #said(node: ParsedNode, key: Place, depth: number): Said {
    const at = this.#plain(node, depth);
    if (isMap(node)) return { value: this.keys(node as ParsedMap, depth), at };
    if (isSeq(node))
      return { value: node.items.map((item) => this.#said(item as ParsedNode, at, depth + 1)), at };
    const { value, type } = node as Scalar.Parsed;
    if (type === 'PLAIN' && value === '') return { value: undefined, at: key };
    const quoted = type === 'QUOTE_DOUBLE' || type === 'QUOTE_SINGLE' ? 1 : 0;
    return { value: String(value), at: { line: at.line, column: at.column + quoted } };
  }

  #key(key: ParsedNode): { readonly name: string; readonly place: Place } {
    const place = this.#plain(key, 0);
    const name = isScalar(key) ? String(key.value).trim().replace(/\s+/g, ' ') : '';
    if (name === '')
      throw new Problem(place, 1, 'a name is missing before this colon', 'write one word or a few');
    if (name === '<<')
      throw new Problem(
        place,
        2,
        "'<<' takes over keys of another place, and a piece has none",
        'write the keys out',
      );
    return { name, place };
  }

  /** @returns where it stands @throws Problem for what is more than plain data */
  #plain(node: ParsedNode | Alias, depth: number): Place {
    const place = this.at(node.range![0]);
    if (isAlias(node))
      throw new Problem(
        place,
        node.source.length + 1,
        `'*${node.source}' refers to another place of the file`,
        'write it out, or name it as a dimension',
      );
    // what stands before a node is not in its range
    if (node.anchor !== undefined)
      throw new Problem(
        place,
        1,
        `'&${node.anchor}' marks this place to be referred to`,
        'leave the mark out',
      );
    if (node.tag !== undefined && (isScalar(node) || !/^tag:yaml.org,2002:(map|seq)$/.test(node.tag)))
      throw new Problem(
        place,
        1,
        `'${node.tag.replace('tag:yaml.org,2002:', '!!')}' names a kind of data`,
        'leave it out: all is told in words',
      );
    if (depth > DEEPEST)
      throw new Problem(
        place,
        1,
        'there are too many lists or keys within each other here',
        'a piece needs no more than five',
      );
    return place;
  }
}

/** A key with neither colon nor value: a comma or a colon was meant otherwise. */
const alone = (name: string, place: Place): Problem =>
  new Problem(
    place,
    name.length,
    `nothing is told of '${name}'`,
    name.includes(':')
      ? 'write a blank after the colon'
      : "between { } a comma ends a phrase: write 'and', or put the phrase in quotes",
  );
