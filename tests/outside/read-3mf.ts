import { inflateRawSync } from 'node:zlib';

/** An object of a 3MF model; mm. */
export interface ReadObject {
  readonly name: string;
  /** `#RRGGBB` of its material. */
  readonly colour: string;
  readonly vertices: readonly (readonly number[])[];
  readonly triangles: readonly (readonly number[])[];
}

export interface Read3mf {
  readonly title: string | undefined;
  /** In the order of the build. */
  readonly objects: readonly ReadObject[];
}

/** The files of a ZIP archive by its central directory (PKWARE APPNOTE 4.3), and the time each carries. */
export function unzip(
  bytes: Uint8Array,
): ReadonlyMap<string, { readonly text: string; readonly time: number }> {
  const zip = Buffer.from(bytes);
  const end = zip.lastIndexOf(Buffer.from('PK\u0005\u0006', 'latin1'));
  const files = new Map<string, { text: string; time: number }>();
  let at = zip.readUInt32LE(end + 16);
  for (let i = 0; i < zip.readUInt16LE(end + 10); i += 1) {
    must(zip.readUInt32LE(at) === 0x02014b50, 'an entry of the directory starts with its mark');
    const [method, packed] = [zip.readUInt16LE(at + 10), zip.readUInt32LE(at + 20)];
    const [name, extra, comment] = [28, 30, 32].map((field) => zip.readUInt16LE(at + field)) as [
      number,
      number,
      number,
    ];
    const local = zip.readUInt32LE(at + 42);
    const start = local + 30 + zip.readUInt16LE(local + 26) + zip.readUInt16LE(local + 28);
    const content = zip.subarray(start, start + packed);
    must(method === 0 || method === 8, 'entries are stored or deflated');
    files.set(zip.toString('utf8', at + 46, at + 46 + name), {
      text: (method === 8 ? inflateRawSync(content) : content).toString('utf8'),
      time: zip.readUInt32LE(at + 12),
    });
    at += 46 + name + extra + comment;
  }
  return files;
}

const CORE = 'http://schemas.microsoft.com/3dmanufacturing/core/2015/02';
const START_PART = 'http://schemas.microsoft.com/3dmanufacturing/2013/01/3dmodel';
const MODEL_TYPE = 'application/vnd.ms-package.3dmanufacturing-3dmodel+xml';

/**
 * Reads a 3MF package by the rules of the core specification (3MF Consortium, 3MF Core Specification 1.3).
 *
 * @throws Error for the first rule that is broken
 */
export function read3mf(bytes: Uint8Array): Read3mf {
  const files = unzip(bytes);
  const types = files.get('[Content_Types].xml')?.text ?? '';
  must(
    types.includes(`Extension="model" ContentType="${MODEL_TYPE}"`),
    'the type of model parts is declared',
  );
  must(/Extension="rels"/.test(types), 'the type of relationships is declared');
  const starts = elements(parseXml(files.get('_rels/.rels')?.text ?? '<none/>'), 'Relationship').filter(
    ({ attributes }) => attributes.Type === START_PART,
  );
  must(starts.length === 1, 'one relationship leads to the model');
  const part = files.get(starts[0]!.attributes.Target!.replace(/^\//, ''));
  must(part !== undefined, 'the model is where the relationship says');
  return readModel(part!.text);
}

/** The model part alone. @throws Error for the first rule that is broken */
export function readModel(text: string): Read3mf {
  const model = parseXml(text);
  must(model.name === 'model' && model.attributes.xmlns === CORE, 'the model is in the core namespace');
  must(model.attributes.unit === 'millimeter', 'the unit is the millimetre');
  must(
    names(model)
      .filter((name) => name !== 'metadata')
      .join() === 'resources,build',
    'resources, then the build',
  );
  const resources = elements(model, 'resources')[0]!;
  const ids = resources.children.map(({ attributes }) => wholeNumber(attributes.id, 'a resource id', 1));
  must(new Set(ids).size === ids.length, 'no two resources have one id');
  const colours = new Map<number, readonly string[]>();
  const objects = new Map<number, ReadObject>();
  resources.children.forEach((resource, i) => {
    if (resource.name === 'basematerials') colours.set(ids[i]!, materialColours(resource));
    else if (resource.name === 'object') objects.set(ids[i]!, readObject(resource, colours));
    else must(false, `no resource is called ${resource.name}`);
  });
  const items = elements(model, 'build')[0]!.children.map(({ name, attributes }) => {
    must(name === 'item', 'the build holds items');
    const object = objects.get(wholeNumber(attributes.objectid, 'an object id', 1));
    must(object !== undefined, 'an item is an object that is there');
    return object!;
  });
  must(items.length > 0, 'something is built');
  const titles = elements(model, 'metadata').filter(({ attributes }) => attributes.name === 'Title');
  must(titles.length <= 1, 'no metadata is given twice');
  return { title: titles[0]?.text, objects: items };
}

function materialColours(list: Element): readonly string[] {
  return list.children.map(({ name, attributes }) => {
    must(name === 'base' && !!attributes.name, 'a material has a name');
    must(/^#[0-9A-F]{6}([0-9A-F]{2})?$/.test(attributes.displaycolor ?? ''), 'a colour is #RRGGBB');
    return attributes.displaycolor!;
  });
}

function readObject(object: Element, colours: ReadonlyMap<number, readonly string[]>): ReadObject {
  const { type, name, pid, pindex } = object.attributes;
  must(type === 'model', 'an object is a model');
  const list = colours.get(wholeNumber(pid, 'a property id', 1));
  must(list !== undefined, 'the properties of an object come before it');
  const colour = list![wholeNumber(pindex, 'a property index', 0)];
  must(colour !== undefined, 'the property of an object is in its list');
  const mesh = elements(object, 'mesh')[0];
  must(
    mesh !== undefined && names(mesh!).join() === 'vertices,triangles',
    'a mesh is vertices, then triangles',
  );
  const [corners, faces] = mesh!.children as [Element, Element];
  const vertices = corners.children.map(({ attributes }) =>
    ['x', 'y', 'z'].map((axis) => number(attributes[axis])),
  );
  const triangles = faces.children.map(({ attributes }) =>
    ['v1', 'v2', 'v3'].map((corner) => wholeNumber(attributes[corner], 'a corner', 0)),
  );
  must(vertices.length >= 4 && triangles.length >= 4, 'a solid has four corners and four faces at least');
  closed(vertices, triangles);
  return { name: name ?? '', colour: colour!, vertices, triangles };
}

/** Every edge is shared by two triangles that run it opposite ways, and outward faces enclose a volume. */
function closed(vertices: readonly (readonly number[])[], triangles: readonly (readonly number[])[]): void {
  const edges = new Set<number>();
  let volume = 0;
  for (const corners of triangles) {
    must(
      corners.every((corner) => corner < vertices.length),
      'a corner of a triangle is there',
    );
    must(new Set(corners).size === 3, 'a triangle has three corners');
    corners.forEach((from, i) => {
      const edge = from * vertices.length + corners[(i + 1) % 3]!;
      must(!edges.has(edge), 'no edge is run twice the same way');
      edges.add(edge);
    });
    const [a, b, c] = corners.map((corner) => vertices[corner]!) as [number[], number[], number[]];
    volume += a[0]! * (b[1]! * c[2]! - b[2]! * c[1]!);
    volume += a[1]! * (b[2]! * c[0]! - b[0]! * c[2]!);
    volume += a[2]! * (b[0]! * c[1]! - b[1]! * c[0]!);
  }
  for (const edge of edges) {
    const [from, to] = [Math.floor(edge / vertices.length), edge % vertices.length];
    must(edges.has(to * vertices.length + from), 'every edge has its two triangles');
  }
  must(volume > 0, 'triangles are counter-clockwise seen from outside');
}

function must(holds: boolean, rule: string): void {
  if (!holds) throw new Error(`3MF: ${rule}`);
}

/** Numbers as the specification's schema has them (ST_Number). */
function number(text: string | undefined): number {
  must(/^[+-]?(\d+(\.\d+)?|\.\d+)([eE][+-]?\d+)?$/.test(text ?? ''), `${text} is a number`);
  return Number(text);
}

function wholeNumber(text: string | undefined, what: string, least: number): number {
  must(
    /^\d+$/.test(text ?? '') && Number(text) >= least && Number(text) < 2 ** 31,
    `${what} is ${least} or more`,
  );
  return Number(text);
}

interface Element {
  readonly name: string;
  readonly attributes: Readonly<Record<string, string | undefined>>;
  readonly children: Element[];
  text: string;
}

const elements = (of: Element, name: string): readonly Element[] =>
  of.children.filter((one) => one.name === name);

const names = (of: Element): readonly string[] => of.children.map(({ name }) => name);

/** XML without comments, sections and entities of its own: all that these files may hold. */
function parseXml(text: string): Element {
  const body = text.replace(/^<\?xml version="1.0" encoding="UTF-8"\?>\s*/, '');
  const open: Element[] = [{ name: '', attributes: {}, children: [], text: '' }];
  const token = /<(\/?)([\w:]+)((?:\s+[\w:]+="[^"<]*")*)\s*(\/?)>|([^<]+)/gy;
  let at = 0;
  for (let found = token.exec(body); found; found = token.exec(body)) {
    at = token.lastIndex;
    const [, closing, name, list, single, words] = found;
    const last = open.at(-1)!;
    if (words !== undefined) last.text += plain(words.trim());
    else if (closing) {
      must(last.name === name, `${last.name} is closed before ${name}`);
      open.pop();
    } else {
      const attributes: Record<string, string> = {};
      for (const [, key, value] of list!.matchAll(/([\w:]+)="([^"]*)"/g)) {
        must(!(key! in attributes), `${name} has one ${key}`);
        attributes[key!] = plain(value!);
      }
      const made: Element = { name: name!, attributes, children: [], text: '' };
      last.children.push(made);
      if (!single) open.push(made);
    }
  }
  must(
    at === body.length && open.length === 1 && open[0]!.children.length === 1,
    'the text is one XML element',
  );
  return open[0]!.children[0]!;
}

function plain(text: string): string {
  return text.replace(/&(\w+;)?/g, (entity, name) => {
    const sign = { 'lt;': '<', 'gt;': '>', 'amp;': '&', 'quot;': '"', 'apos;': "'" }[name as string];
    must(sign !== undefined, `${entity} is an entity of XML`);
    return sign!;
  });
}
