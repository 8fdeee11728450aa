import serializer from '@jscad/dxf-serializer';
import jscad from '@jscad/modeling';
import { type Entity, LAYERS, type Template, type TextEntity } from '../../drawing/index.js';
import type { Vec2 } from '../../frame/index.js';
import { circle, tessellate } from '../../profile/index.js';
import {
  COLOURS,
  type DxfScale,
  entitiesOf,
  inFile,
  LINE_TYPES,
  oneRow,
  type Pair,
  pairsOf,
  rounded,
  sectionOf,
  textOf,
  withHeader,
  withLayers,
  withLineTypes,
} from '../dxf/index.js';

const { path2 } = jscad.geometries;

/**
 * A template with straight pieces only.
 *
 * The serializer writes paths on layer 0, repeats the first vertex of a closed one and has no words; layers, closing and the
 * words are put right in its text afterwards.
 */
export function segmentsTemplate(template: Template, { perMm, insunits, measurement }: DxfScale): string {
  const drawn = template.entities.filter((entity) => entity.kind !== 'text');
  const paths = drawn.map((entity) => pathOf(entity, perMm));
  const pairs = pairsOf(serializer.serialize({}, ...paths)[0] ?? '');
  const { before, content, after } = sectionOf(pairs, 'ENTITIES');
  const lines = entitiesOf(content).map((entity, i) => onLayer(entity, drawn[i]!, i));
  const texts = template.entities
    .filter((entity) => entity.kind === 'text')
    .map((text, i) => textPairs(text, perMm, lines.length + i));
  const all = [...before, ...lines.flat(), ...texts.flat(), ...after];
  const count = lines.length + texts.length;
  const layered = withLayers(
    all,
    LAYERS.map((name) => ({ name, colour: COLOURS[name] })),
    handle(count),
  );
  const typed = withLineTypes(layered, Object.values(LINE_TYPES), perMm, handle(count + LAYERS.length));
  const united = withHeader(typed, '$INSUNITS', '70', String(insunits));
  return textOf(withHeader(united, '$MEASUREMENT', '70', String(measurement)));
}

type Drawn = Exclude<Entity, TextEntity>;

function pathOf(entity: Drawn, perMm: number): ReturnType<typeof path2.create> {
  const placed = (points: readonly Vec2[]) =>
    points.map(([x, y]): [number, number] => [inFile(x, perMm), inFile(y, perMm)]);
  switch (entity.kind) {
    case 'line':
      return path2.fromPoints({ closed: false }, placed([entity.from, entity.to]));
    case 'circle':
      return path2.fromPoints(
        { closed: true },
        placed(tessellate(circle({ diameter: 2 * entity.radius, centre: entity.centre }))),
      );
    case 'profile':
      return path2.fromPoints({ closed: true }, placed(tessellate(entity.profile)));
  }
}

/** A path of the serializer on its layer; a closed one without its repeated vertex. */
function onLayer(entity: readonly Pair[], drawn: Drawn, index: number): Pair[] {
  const closed = entity.some((pair) => pair[0] === '70' && pair[1] === '1');
  const kept = closed ? entity.slice(0, -2) : entity;
  const { layer, dashing } = drawn;
  return kept.flatMap((pair): readonly Pair[] => {
    if (pair[0] === '5') return [['5', handle(index)]];
    if (pair[0] === '8')
      return [['8', layer], ...(dashing ? [['6', LINE_TYPES[dashing].name] as const] : [])];
    if (pair[0] === '10' || pair[0] === '20') return [[pair[0], String(rounded(Number(pair[1]), 8))]];
    if (pair[0] === '90' && closed) return [['90', String(Number(pair[1]) - 1)]];
    return [pair];
  });
}

const textPairs = (text: TextEntity, perMm: number, index: number): Pair[] => [
  ['0', 'TEXT'],
  ['5', handle(index)],
  ['100', 'AcDbEntity'],
  ['8', text.layer],
  ['100', 'AcDbText'],
  ['10', String(inFile(text.at[0], perMm))],
  ['20', String(inFile(text.at[1], perMm))],
  ['30', '0'],
  ['40', String(inFile(text.height, perMm))],
  ['1', oneRow(text.text)],
  ['50', String(rounded(text.rotationDeg, 6))],
  ['100', 'AcDbText'],
];

/** Above every handle the serializer's tables use. */
const FIRST_HANDLE = 0x10000;
const handle = (index: number): string => (FIRST_HANDLE + index).toString(16).toUpperCase();
