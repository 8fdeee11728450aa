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
