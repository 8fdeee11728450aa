/** A key of a piece's file, and the keys it stands below; an item of a list is `[` and where it begins. */
export interface ToldKey {
  readonly path: readonly string[];
  readonly key: string;
}

/** What a person is writing where the text ends. */
export interface Writing extends Pick<ToldKey, 'path'> {
  readonly kind: 'key' | 'value';
  /** What stands there of it. */
  readonly typed: string;
}

const KEY = /^([^\s#{}[\]"'-][^:#{}[\]]*?)\s*:(?=\s|$)/;

const COMMENT = /(^|\s)#/;

/**
 * Reads a piece's file that is being written, right or wrong: which keys stand where, and what its end is in the midst of. Nothing is
 * being written in a comment, behind a closed bracket, or on a line that stands askew of its neighbours.
 */
export function toldKeys(text: string): { readonly keys: readonly ToldKey[]; readonly writing?: Writing } {
  const keys: ToldKey[] = [];
  const block: { readonly indent: number; readonly name: string }[] = [];
  const flow: { readonly close: string; name?: string }[] = [];
  const path = (): readonly string[] => [
    ...block.map(({ name }) => name),
    ...flow.flatMap(({ name }) => name ?? []),
  ];
  let writing: Writing | undefined;
  let offset = 0;
  /** @returns what stands in brackets from there on */
  const inBrackets = (line: string, begin: number): Writing | undefined => {
    let start = begin;
    for (let i = begin; i < line.length; i += 1) {
      const letter = line[i]!;
      const top = flow.at(-1);
      if (letter === '#' && COMMENT.test(line.slice(i - 1, i + 1))) return undefined;
      if (letter === '"' || letter === "'") {
        const end = line.indexOf(letter, i + 1);
        if (end < 0) return undefined;
        i = end;
      } else if (letter === '{' || letter === '[') {
        if (letter === '{' && top?.close === ']') top.name = `[${offset + i}`;
        flow.push({ close: letter === '{' ? '}' : ']' });
        start = i + 1;
      } else if (letter === top?.close) {
        flow.pop();
        start = line.length;
        if (flow.length === 0) return undefined;
      } else if (letter === ',' && top) {
        delete top.name;
        start = i + 1;
      } else if (
        letter === ':' &&
        top?.close === '}' &&
        top.name === undefined &&
        /\s|^$/.test(line[i + 1] ?? '')
      ) {
        const key = line.slice(start, i).trim();
        keys.push({ path: path(), key });
        top.name = key;
        start = i + 1;
      }
    }
    const top = flow.at(-1)!;
    const kind = top.close === '}' && top.name === undefined ? 'key' : 'value';
    return { path: path(), kind, typed: line.slice(start).trimStart() };
  };
  const inLine = (line: string): Writing | undefined => {
    if (flow.length > 0) return inBrackets(line, 0);
    const [, space = '', dashes = '', body = ''] = /^(\s*)((?:-\s+)*)(.*)$/.exec(line)!;
    for (const { index } of dashes.matchAll(/-/g)) {
      const at = space.length + index;
      while (
        block.length > 0 &&
        (block.at(-1)!.indent > at || (block.at(-1)!.indent === at && block.at(-1)!.name.startsWith('[')))
      )
        block.pop();
      block.push({ indent: at, name: `[${offset + at}` });
    }
    const indent = space.length + dashes.length;
    let neighbour = indent;
    while (block.length > 0 && block.at(-1)!.indent >= indent) neighbour = block.pop()!.indent;
    const key = KEY.exec(body);
    if (key) {
      keys.push({ path: path(), key: key[1]! });
      block.push({ indent, name: key[1]! });
    }
    const value = key ? body.slice(key[0].length) : body;
    const typed = value.trimStart();
    if (/^[{[]/.test(typed)) return inBrackets(line, line.length - typed.length);
    if (neighbour !== indent || COMMENT.test(value) || (key && value === '')) return undefined;
    return { path: path(), kind: key ? 'value' : 'key', typed };
  };
  const lines = text.split('\n');
  for (const [i, line] of lines.entries()) {
    // a line with nothing on it ends nothing
    if (i === lines.length - 1 || /^\s*[^\s#]/.test(line)) writing = inLine(line);
    offset += line.length + 1;
  }
  return { keys, ...(writing && { writing }) };
}
