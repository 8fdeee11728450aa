import { expect, test } from 'vitest';
import * as z from 'zod';
import boltLengths from '../../shared/bolt-lengths.json' with { type: 'json' };
import climates from '../../shared/climates.json' with { type: 'json' };
import cutters from '../../shared/cutters.json' with { type: 'json' };
import fasteners from '../../shared/fasteners.json' with { type: 'json' };
import routerSpeeds from '../../shared/router-speeds.json' with { type: 'json' };
import sheetGoods from '../../shared/sheet-goods.json' with { type: 'json' };
import species from '../../shared/species.json' with { type: 'json' };

const source = z
  .string()
  .regex(
    /ISO|ASME|EN \d|Handbook|Forest Products Laboratory|trade|makers|common practice, no source/,
    'names no document',
  );
const unit = z.enum(['mm', 'in']);
const system = z.enum(['metric', 'inch']);
const positive = z.number().positive();
const part = <T extends z.ZodRawShape>(shape: T) =>
  z.array(z.strictObject({ size: z.string(), unit, ...shape, source })).length(7);
const washer = { bore: positive, diameter: positive, thickness: positive };
const bought = z.array(z.strictObject({ name: z.string(), system, unit, diameter: positive, source }));

test.each([
  [
    'fasteners',
    fasteners,
    z.strictObject({
      sizes: part({ system, diameter: positive, pitch: positive }),
      clearanceHoles: part({ diameter: positive }),
      hexHeads: part({ acrossFlats: positive, acrossCornersLeast: positive, height: positive }),
      nuts: part({ acrossFlats: positive, thickness: positive }),
      washers: part(washer),
      largeWashers: part(washer),
      capHeads: part({ diameter: positive, height: positive, key: positive }),
      countersunkHeads: part({
        diameter: positive,
        height: positive,
        angleDeg: z.union([z.literal(90), z.literal(82)]),
      }),
    }),
  ],
  ['bolt lengths', boltLengths, z.array(z.strictObject({ system, unit, length: positive, source })).min(20)],
  [
    'climates',
    climates,
    z
      .array(
        z.strictObject({
          name: z.string(),
          help: z.string(),
          dryPercent: z.number().min(3).max(12),
          dampPercent: z.number().min(8).max(20),
          source,
        }),
      )
      .min(4),
  ],
  ['cutters', cutters, bought.length(8)],
  [
    'router speeds',
    routerSpeeds,
    z.array(z.strictObject({ unit, upToDiameter: positive, rpm: z.int(), source })).length(4),
  ],
  [
    'sheet goods',
    sheetGoods,
    z
      .array(
        z.strictObject({
          name: z.string(),
          densityLeast: z.number().min(300),
          densityMost: z.number().max(1500),
          usualThicknesses: z.array(positive).min(1),
          source,
        }),
      )
      .min(5),
  ],
  [
    'species',
    species,
    z
      .array(
        z.strictObject({
          name: z.string(),
          specificGravity: z.strictObject({ at12Percent: z.number().min(0.3).max(0.8), source }),
          shrinkage: z
            .strictObject({
              radialPercent: positive,
              tangentialPercent: positive,
              volumetricPercent: positive,
              startPercent: z.union([z.literal(30), z.literal(22)]),
              source: source.or(z.string().includes('USDA')),
            })
            .optional(),
          movement: z
            .strictObject({ radial: positive, tangential: positive, byGroup: z.boolean(), source })
            .optional(),
          bending: z.strictObject({
            rupturePsi: positive,
            elasticityMpsi: z.number().min(1).max(2.5),
            source,
          }),
          strength: z.strictObject({
            shearMPa: z.number().min(5).max(20),
            compressionAcrossMPa: z.number().min(2).max(15),
            tensionAcrossMPa: z.number().min(1).max(8).optional(),
            source,
          }),
          elasticRatios: z.strictObject({ tangential: positive, radial: positive, source }).optional(),
        }),
      )
      .min(15),
  ],
])('every row of the %s names its source and holds only known figures', (_name, table, schema) => {
  expect(schema.safeParse(table).error?.issues ?? []).toEqual([]);
});

test('no two rows of a table describe the same thing', () => {
  const names = [species, sheetGoods, cutters, climates].map((table) => table.map((row) => row.name));
  names.push(...Object.values(fasteners).map((rows) => rows.map((row) => row.size)));
  names.push(boltLengths.map((row) => `${row.system} ${row.length}`));
  for (const list of names) expect(new Set(list).size).toBe(list.length);
});
