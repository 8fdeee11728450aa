import { unzipSync, type Zippable, zipSync } from 'fflate';
import {
  designFiles,
  FILE_KINDS,
  type FileKind,
  type OutputFile,
  onePlan,
  panelHtml,
  type Started,
  type Supplies,
  sha256,
  startDesign,
  summaryText,
  toldOnPage,
} from '../files/index.js';
import { worthCuring } from '../verdict/index.js';
import { asBytes } from './as-bytes.js';
import type { Asked, Outfit } from './messages.js';
import { type Desk, requestOf } from './show-state.js';

/** Kinds of file a page makes: pictures only where it holds what draws them, and the living plan is the page itself. */
export const pageKinds = (pictures: boolean): readonly FileKind[] =>
  FILE_KINDS.filter((kind) => kind !== 'living' && (pictures || kind !== 'pictures'));

/** Files as the command line writes them. */
export async function saveState(
  { state, wanted, force }: Asked & { kind: 'save' },
  desk: Desk,
): Promise<void> {
  const made = await startDesign({ ...requestOf(await desk.read(state), desk), force }, desk.outfit.kernel);
  try {
    if (made.findings.some(worthCuring)) await made.findCures();
    const folder = made.solids.design.name;
    const supplies = suppliesOf(desk.outfit);
    if (wanted !== 'all') {
      const held = made.failed && !force;
      const files = held ? [] : [await onePlan(made, wanted, supplies)];
      desk.tell({ kind: 'saved', folder, files, heldBack: held ? [`plan.${wanted.toLowerCase()}.pdf`] : [] });
      return;
    }
    const { files: kinds, heldBack } = await designFiles(
      made,
      new Set(pageKinds(desk.outfit.renderer !== undefined)),
      supplies,
    );
    const files = [...kinds, summaryFile(made, kinds)];
    desk.tell({ kind: 'saved', folder, files, zip: zipped(folder, files), heldBack });
  } finally {
    made.dispose();
  }
}

/** Looks for the one size that ends each error or worry; it takes some seconds. */
export async function cureState({ state }: Pick<Asked, 'state'>, desk: Desk): Promise<void> {
  const made = await startDesign(requestOf(await desk.read(state), desk), desk.outfit.kernel);
  try {
    await made.findCures();
    const { data, papers } = toldOnPage(made);
    desk.tell({ kind: 'cured', data, panel: panelHtml(data, papers) });
  } finally {
    made.dispose();
  }
}

function summaryFile(made: Started, files: readonly OutputFile[]): OutputFile {
  const rows = files.map(({ path, bytes }) => ({ path, bytes: bytes.length, sha256: sha256(bytes) }));
  return { path: 'summary.json', bytes: new TextEncoder().encode(summaryText(made, rows, true)) };
}

/** The same bytes each time: a ZIP cannot be older than this. */
const ZIP_DATE = '1980-01-01T00:00:00';

function zipped(folder: string, files: readonly OutputFile[]): Uint8Array {
  const entries: Zippable = Object.fromEntries(
    files.map(({ path, bytes }) => [`${folder}/${path}`, [bytes, { mtime: ZIP_DATE, level: 6 as const }]]),
  );
  return zipSync(entries);
}

const suppliesOf = ({ plain, bold, viewer, renderer }: Outfit): Supplies => ({
  planFonts: async () => ({ plain, bold }),
  viewerScript: async () => viewer,
  renderer: async () => {
    if (renderer === undefined) throw new Error('this page has no renderer of pictures');
    return unzipSync(asBytes(renderer.trim()))['renderer.wasm']!;
  },
  livingScripts: () => Promise.reject(new Error('a page does not pack itself')),
});
