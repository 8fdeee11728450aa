import path from 'node:path';
import { EZDXF, printed } from './programs.js';

/** What ezdxf finds in a file; the fields of read_dxf.py. Lengths in the file's unit. */
export interface ReadDxf {
  readonly version: string;
  readonly errors: readonly (readonly [code: number, message: string])[];
  readonly fixes: readonly (readonly [code: number, message: string])[];
  readonly insunits: number | null;
  readonly measurement: number | null;
  readonly layers: readonly string[];
  readonly used: readonly string[];
  readonly entities: readonly ReadEntity[];
}

export interface ReadPolyline {
  readonly type: 'LWPOLYLINE';
  readonly layer: string;
  readonly closed: boolean;
  readonly vertices: number;
  readonly repeated: number;
  readonly radii: readonly number[];
  readonly area: number;
}

type Point = readonly [x: number, y: number, z: number];

export type ReadEntity =
  | ReadPolyline
  | { readonly type: 'CIRCLE'; readonly layer: string; readonly radius: number }
  | { readonly type: '3DFACE'; readonly layer: string; readonly corners: readonly [Point, Point, Point] }
  | { readonly type: 'TEXT'; readonly layer: string; readonly text: string }
  | { readonly type: 'LINE'; readonly layer: string };

/** Reads files with ezdxf, all in one start of it. */
export const readDxf = (files: readonly string[]): readonly ReadDxf[] =>
  printed(EZDXF, path.join(import.meta.dirname, 'read_dxf.py'), ...files)
    .trim()
    .split('\n')
    .map((row) => JSON.parse(row) as ReadDxf);

/** The volume triangles enclose, Σ v1·(v2×v3)/6. */
export const faceVolume = (entities: readonly ReadEntity[]): number =>
  entities.reduce((sum, entity) => {
    if (entity.type !== '3DFACE') return sum;
    const [[ax, ay, az], [bx, by, bz], [cx, cy, cz]] = entity.corners;
    return sum + (ax * (by * cz - bz * cy) + ay * (bz * cx - bx * cz) + az * (bx * cy - by * cx)) / 6;
  }, 0);
