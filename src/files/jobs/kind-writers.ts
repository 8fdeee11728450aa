import type { OutputFile } from '../folder/index.js';
import type { Made, Supplies } from '../made/index.js';
import type { FileKind } from './file-kinds.js';

/** How one kind of file is written; its libraries are loaded only when it is. */
export interface KindWriter {
  /** Paths wood is cut from, held back when a check failed; none for files to look at. */
  readonly cutting: readonly string[];
  readonly write: (made: Made, supplies: Supplies) => Promise<readonly OutputFile[]>;
}

/** Every kind of file. A new kind is added here and to {@link FileKind}. */
export const KIND_WRITERS: Readonly<Record<FileKind, KindWriter>> = {
  stl: {
    cutting: [],
    write: async ({ solids, aids, request }) => {
      const { stlFiles } = await import('../solids/solid-files.js');
      return stlFiles(solids, aids, request.format);
    },
  },
  faces: {
    cutting: [],
    write: async ({ solids }) => {
      const [{ meshDxf }, { placedMeshes }] = await Promise.all([
        import('../solids/mesh-dxf.js'),
        import('../solids/solid-files.js'),
      ]);
      const pieces = placedMeshes(solids).map(({ id, mesh }) => ({ name: id.replaceAll('/', '-'), mesh }));
      return [{ path: 'faces/assembly.mm.dxf', bytes: meshDxf(pieces) }];
    },
  },
  dxf: {
    cutting: ['templates/*.dxf'],
    write: async (made) => {
      const { templateFiles } = await import('../templates/template-files.js');
      return templateFiles(made);
    },
  },
  shop: {
    cutting: ['shop/*'],
    write: async ({ papers, solids, say, failed }) => {
      const { shopFiles } = await import('../papers/shop-files.js');
      return shopFiles(papers, solids.design, say, failed);
    },
  },
  '3mf': {
    cutting: [],
    write: async ({ solids }) => {
      const [{ threeMf }, { piecesOf }] = await Promise.all([
        import('../solids/three-mf.js'),
        import('../solids/piece.js'),
      ]);
      return [{ path: 'exchange/assembly.3mf', bytes: threeMf(solids.design.title, piecesOf(solids)) }];
    },
  },
  glb: {
    cutting: [],
    write: async ({ solids }) => {
      const [{ glb }, { piecesOf }] = await Promise.all([
        import('../solids/glb.js'),
        import('../solids/piece.js'),
      ]);
      return [{ path: 'exchange/assembly.glb', bytes: await glb(solids.design.title, piecesOf(solids)) }];
    },
  },
  pictures: {
    cutting: [],
    write: async (made, { renderer }) => {
      const [{ pictureFiles }, wasm] = await Promise.all([
        import('../pictures/picture-files.js'),
        renderer(),
      ]);
      return pictureFiles(made, wasm);
    },
  },
  plan: {
    cutting: ['plan.*.pdf', 'plan/*'],
    write: async (made, { planFonts }) => {
      const [{ planFiles }, fonts] = await Promise.all([import('../plan/plan-files.js'), planFonts()]);
      return planFiles(made, fonts);
    },
  },
  page: {
    cutting: [],
    write: async (made, { viewerScript }) => {
      const [{ pageFile }, script] = await Promise.all([import('../page/page-file.js'), viewerScript()]);
      return [pageFile(made, script)];
    },
  },
  living: {
    cutting: [],
    write: async (made, { viewerScript, livingScripts }) => {
      const [{ livingFile }, viewer, scripts] = await Promise.all([
        import('../page/living-file.js'),
        viewerScript(),
        livingScripts(made.request.livingPictures ?? false),
      ]);
      return [livingFile(made, viewer, scripts)];
    },
  },
};
