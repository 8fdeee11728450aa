declare module '@jscad/stl-serializer' {
  import type { Geom3 } from '@jscad/modeling/src/geometries/types.js';

  const serializer: {
    serialize(options: { binary: true }, ...objects: Geom3[]): ArrayBuffer[];
    serialize(options: { binary: false }, ...objects: Geom3[]): string[];
  };
  export default serializer;
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
