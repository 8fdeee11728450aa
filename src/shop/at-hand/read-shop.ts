import * as z from 'zod';
import { InputError } from '../../errors.js';
import { type Units, withFraction } from '../../length/index.js';
import { didYouMean, optionName, readParameters } from '../../model/index.js';
import { ownClimate } from './season-of.js';
import type { Shop } from './shop.js';
import { shopFile } from './shop-file.js';

/**
 * What is at hand, from the contents of a shop file.
 *
 * Names may be kebab-case or camelCase. What is left out stays unknown: nothing is taken over from the built-in shop.
 *
 * @param raw the file's YAML as plain values
 * @param name of the file with its folders, told in errors; papers tell it without them, for they may be published
 * @param units what bare numbers are in when the file does not say; lengths may carry their own
 * @throws InputError with every problem, a line each, each with its path in the file: `cutters[1].shank`
 */
export function readShop(raw: unknown, name: string, units: Units): Shop {
  const reading: Reading = { units: shopUnits(raw, units), problems: [] };
  const values = readGroup(shopFile, raw ?? {}, '', reading);
  requireSoundBase(values as Partial<Shop>, reading);
  requireClimate(values as Partial<Shop>, reading);
  const { problems } = reading;
  if (problems.length > 0)
    throw new InputError(
      problems.length === 1 ? problems[0]!.code : 'shop-refused',
      problems.map(({ message }) => `${name}: ${message}`).join('\n'),
      problems,
    );
  const { units: _, ...said } = values as Partial<Shop> & Pick<Shop, 'router'> & { readonly units?: Units };
  const { base } = said.router;
  return {
    name: name.split(/[\\/]/).at(-1)!,
    units: withFraction(units, said.fraction),
    measures: reading.units,
    cutters: [],
    bushes: [],
    jig: {},
    sheets: [],
    lumber: [],
    clamps: [],
    shortest: {},
    paper: reading.units === 'in' ? 'Letter' : 'A4',
    ...said,
    router: { ...said.router, base: { ...base, across: (base.across as number | undefined) ?? base.along } },
  };
}

/** What bare numbers of a shop file are in: what it says itself, else the units of the run. */
export const shopUnits = (raw: unknown, units: Units): Units => {
  const said = isGroup(raw) ? raw.units : undefined;
  return said === 'mm' || said === 'in' ? said : units;
};

interface Reading {
  readonly units: Units;
  readonly problems: InputError[];
}

/** What a group of the file says, by camelCase name; problems are gathered, not thrown. */
function readGroup(schema: z.ZodObject, raw: unknown, path: string, reading: Reading): object {
  if (!isGroup(raw)) {
    refuse(reading, path, `holds ${worded(raw)}; it must be a group of names with values: write one a line`);
    return {};
  }
  const names = new Map(Object.keys(schema.shape).map((name) => [optionName(name), name]));
  const values: Record<string, unknown> = {};
  for (const [given, value] of Object.entries(raw)) {
    const name = names.get(optionName(given));
    if (name === undefined) {
      const inside = path === '' ? '' : `${path}: `;
      reading.problems.push(
        new InputError(
          'shop-unknown-name',
          `${inside}there is no '${given}' here${didYouMean(optionName(given), [...names.keys()])}`,
          { of: 'shop', name: path },
        ),
      );
      continue;
    }
    if (name in values) {
      refuse(reading, below(path, name), 'is given twice; leave one spelling of it out');
      continue;
    }
    values[name] = undefined;
    const read = readField(schema.shape[name] as z.ZodType, value, below(path, name), reading);
    if (read !== undefined) values[name] = read;
  }
  for (const [option, name] of names) {
    const field = schema.shape[name] as z.ZodType;
    if (name in values) {
      if (values[name] === undefined) delete values[name];
      continue;
    }
    if (field instanceof z.ZodDefault) values[name] = field.parse(undefined);
    else if (isNeeded(field)) missing(reading, path, option, field);
  }
  return values;
}

/** Lists may be empty; a group is needed when something in it is. */
function isNeeded(field: z.ZodType): boolean {
  if (field instanceof z.ZodOptional || field instanceof z.ZodArray || field instanceof z.ZodRecord)
    return false;
  if (field instanceof z.ZodObject)
    return Object.values(field.shape).some((one) => isNeeded(one as z.ZodType));
  return !(field instanceof z.ZodDefault);
}

function missing(reading: Reading, path: string, option: string, field: z.ZodType): void {
  const help = (field.meta() as { help?: string } | undefined)?.help ?? '';
  refuse(reading, below(path, option), `is missing; it is needed: ${help.replace(/\.$/, '')}`);
}

function readField(field: z.ZodType, raw: unknown, path: string, reading: Reading): unknown {
  if (raw === null || raw === undefined) {
    if (isNeeded(field) && !(field instanceof z.ZodObject)) refuse(reading, path, 'is empty; give a value');
    return field instanceof z.ZodObject ? readGroup(field, {}, path, reading) : undefined;
  }
  const inner = field instanceof z.ZodOptional ? (field.unwrap() as z.ZodType) : field;
  if (inner instanceof z.ZodObject) return readGroup(inner, raw, path, reading);
  if (inner instanceof z.ZodRecord) {
    if (isGroup(raw)) return Object.fromEntries(Object.entries(raw).map(([key, is]) => [camelCase(key), is]));
    return refuse(reading, path, `holds ${worded(raw)}; it must be a group of names with values`);
  }
  if (!(inner instanceof z.ZodArray)) return readOne(field, raw, path, reading);
  if (!Array.isArray(raw))
    return refuse(
      reading,
      path,
      `holds ${worded(raw)}; it must be a list: write its rows with a dash before each`,
    );
  const each = inner.element as z.ZodType;
  const read = raw.map((row, at) =>
    each instanceof z.ZodObject
      ? readGroup(each, row, `${path}[${at}]`, reading)
      : readOne(each, row, `${path}[${at}]`, reading),
  );
  if (path.endsWith('turret-steps')) ascending(read as number[], path, reading);
  return read;
}

/** One value, read as the parameters of a model are. */
function readOne(field: z.ZodType, raw: unknown, path: string, reading: Reading): unknown {
  try {
    const { value } = readParameters(
      { name: path, parameters: z.object({ value: field }) },
      { value: raw },
      reading.units,
    ) as { value: unknown };
    return value;
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    return refuse(reading, path, error.message.replace(/^value /, ''));
  }
}

/** A round base is as wide as it is long; its flats, when it has any, are nearer than its round edge. */
function requireSoundBase({ router }: Partial<Shop>, reading: Reading): void {
  const { shape, along, across = along, flats = {} } = router?.base ?? {};
  if (along === undefined || across === undefined) return;
  const given = Object.entries(flats).filter(([, at]) => at !== undefined);
  if (shape !== 'rectangle' && across !== along)
    refuse(
      reading,
      'router.base.across',
      'differs from along; a round base has one diameter: leave across out, and give flats by their distances from the cutter',
    );
  if (shape !== 'round with flats' && given.length > 0)
    refuse(
      reading,
      'router.base.flats',
      `do not suit shape ${shape}: choose round with flats, or leave them out`,
    );
  if (shape === 'round with flats' && given.length === 0)
    refuse(reading, 'router.base.flats', 'are missing: give near, far or sides, or choose round');
  for (const [side, at] of given)
    if (shape === 'round with flats' && at! >= along / 2)
      refuse(
        reading,
        `router.base.flats.${side}`,
        'is no nearer to the cutter than the round edge, half of along: measure both again, or leave it out',
      );
}

/** The air of a place is told whole or not at all, and is drier when it is dry. */
function requireClimate({ place = {} }: Partial<Shop>, reading: Reading): void {
  const { climate, ...air } = place;
  const told = Object.keys(air).length;
  if (told === 0) return;
  const own = ownClimate(place);
  if (own === undefined || climate !== undefined)
    refuse(
      reading,
      'place',
      own === undefined
        ? `gives ${told} of the four figures of the air; give dry-celsius, dry-humidity, damp-celsius and damp-humidity`
        : 'names a climate and gives the air as well: leave one of them out',
    );
  else if (own.dampPercent <= own.dryPercent)
    refuse(
      reading,
      'place',
      `dries wood to ${own.dryPercent.toFixed(1)} % and damps it to ${own.dampPercent.toFixed(1)} %; damp air must leave more: give the drier air as dry`,
    );
}

/** A turret is counted from its lowest step. */
function ascending(steps: readonly number[], path: string, reading: Reading): void {
  if (steps.some((step) => step === undefined)) return;
  if (steps[0] !== 0 || steps.some((step, i) => i > 0 && step <= steps[i - 1]!))
    refuse(
      reading,
      path,
      `are ${steps.join(', ')}; they must be heights above the lowest step, from 0 upwards: sort them`,
    );
}

function refuse(reading: Reading, path: string, words: string): undefined {
  const where = path === '' ? '' : `${path} `;
  reading.problems.push(new InputError('shop-refused', `${where}${words}`, { of: 'shop', name: path }));
  return undefined;
}

/** `plate-thickness` as `plateThickness`. */
const camelCase = (name: string): string =>
  name.replace(/-([a-z])/g, (_, letter: string) => letter.toUpperCase());

/** Whether a place of a file holds names with what is said of each. */
export const isGroup = (raw: unknown): raw is Readonly<Record<string, unknown>> =>
  typeof raw === 'object' && raw !== null && !Array.isArray(raw);

const below = (path: string, name: string): string =>
  path === '' ? optionName(name) : `${path}.${optionName(name)}`;

const worded = (raw: unknown): string =>
  Array.isArray(raw) ? 'a list' : raw === null ? 'nothing' : isGroup(raw) ? 'a group' : `'${String(raw)}'`;
