declare module '@jscad/stl-serializer/CSGToStlb.js' {
  import type { Geom3 } from '@jscad/modeling/src/geometries/types.js';

  /** Header, count and triangles of solids whose polygons are triangles already. */
  export function serializeBinary(objects: Geom3[], options: object): ArrayBuffer[];
}

declare module '@jscad/stl-serializer/CSGToStla.js' {
  import type { Geom3 } from '@jscad/modeling/src/geometries/types.js';

  export function serializeText(objects: Geom3[], options: object): string[];
}

declare module '@jscad/dxf-serializer' {
  import type { Geom2, Geom3, Path2 } from '@jscad/modeling/src/geometries/types.js';

  const serializer: {
    serialize(
      options: {
        geom2To?: 'lwpolyline' | 'polyline';
        geom3To?: '3dface' | 'polyline';
        pathTo?: 'lwpolyline';
      },
      ...objects: (Geom2 | Geom3 | Path2)[]
    ): string[];
  };
  export default serializer;
}
