import path from 'node:path';
import { onceForEach } from '../../src/once.js';
import { EZDXF, printed } from './programs.js';

/** What ezdxf finds in a file; the fields of read_dxf.py. Lengths in the file's unit. */
export interface ReadDxf {
  readonly version: string;
  readonly errors: readonly (readonly [code: number, message: string])[];
  readonly fixes: readonly (readonly [code: number, message: string])[];
  readonly insunits: number | null;
  readonly measurement: number | null;
  /** Dashes (above 0) and gaps (below 0) of every line type, by name. */
  readonly linetypes: Readonly<Record<string, readonly number[]>>;
  readonly layers: readonly string[];
  readonly used: readonly string[];
  readonly entities: readonly ReadEntity[];
}

/** What every line of a template carries: its layer, its line type, and the points it runs through. */
interface ReadLine {
  readonly layer: string;
  readonly linetype: string;
  readonly run: readonly (readonly [x: number, y: number])[];
}

export interface ReadPolyline extends ReadLine {
  readonly type: 'LWPOLYLINE';
  readonly closed: boolean;
  readonly vertices: number;
  readonly repeated: number;
  readonly radii: readonly number[];
  readonly area: number;
}

type Point = readonly [x: number, y: number, z: number];

export type ReadEntity =
  | ReadPolyline
  | (ReadLine & { readonly type: 'CIRCLE'; readonly radius: number })
  | { readonly type: '3DFACE'; readonly layer: string; readonly corners: readonly [Point, Point, Point] }
  | {
      readonly type: 'TEXT';
      readonly layer: string;
      readonly text: string;
      readonly height: number;
      readonly at: readonly [x: number, y: number];
      readonly rotation: number;
    }
  | (ReadLine & { readonly type: 'LINE' });

/** Every DXF file of a design by its path, in the order it was written, read in one start of ezdxf. */
export const dxfFilesOf = onceForEach(
  ({ files }: { readonly files: readonly { readonly path: string }[] }): ReadonlyMap<string, ReadDxf> => {
    const paths = files.map((file) => file.path).filter((file) => file.endsWith('.dxf'));
    const rows = printed(EZDXF, path.join(import.meta.dirname, 'read_dxf.py'), ...paths)
      .trim()
      .split('\n');
    if (rows.length !== paths.length)
      throw new Error(`${paths.length} files, and ezdxf tells of ${rows.length}`);
    return new Map(rows.map((row, i) => [paths[i]!, JSON.parse(row) as ReadDxf]));
  },
);

/** The volume triangles enclose, Σ v1·(v2×v3)/6. */
export const faceVolume = (entities: readonly ReadEntity[]): number =>
  entities.reduce((sum, entity) => {
    if (entity.type !== '3DFACE') return sum;
    const [[ax, ay, az], [bx, by, bz], [cx, cy, cz]] = entity.corners;
    return sum + (ax * (by * cz - bz * cy) + ay * (bz * cx - bx * cz) + az * (bx * cy - by * cx)) / 6;
  }, 0);
