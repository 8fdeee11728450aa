import { optionName, parameterMeta } from '../../model/index.js';
import { aboutOf } from '../../range/index.js';
import { builtInShop, shopExample, toolsOf } from '../../shop/index.js';
import type { OutputFile } from '../folder/index.js';
import type { LivingScripts, Made } from '../made/index.js';
import { LIVING_CONTROLS } from './living-controls.js';
import { type LivingData, type LivingDesign, type LivingState, PATIENCE } from './living-data.js';
import { LIVING_STYLE } from './living-style.js';
import { stillOf, toldOnPage } from './page-file.js';
import { inScript, previewPage } from './preview-page.js';
import { exactText, sizeForm } from './size-form.js';

/** Nothing from anywhere; the worker and what is saved come from the page itself. */
const POLICY =
  "default-src 'none'; script-src 'unsafe-inline' 'wasm-unsafe-eval'; worker-src blob:; style-src 'unsafe-inline'; img-src data: blob:";

/**
 * A page in which the sizes of a design can be changed and its plan saved for the new ones: the preview, and the whole program
 * beside it. It opens from a disk with no network.
 *
 * @param viewer the packed script of `src/viewer`
 */
export function livingFile(made: Made, viewer: string, scripts: LivingScripts): OutputFile {
  const { request } = made;
  const { model } = request;
  const design: LivingDesign = {
    name: model.name,
    title: made.solids.design.title,
    summary: model.summary,
    ...(model.told !== undefined && {
      told: { file: model.toldIn ?? `${model.name}.yaml`, text: model.told },
    }),
    ...(request.ranges && {
      ranges: { about: aboutOf(request, request.values, request.version), ...request.ranges },
    }),
  };
  const page = livingPage(made, [design], viewer, scripts);
  return { path: 'living-plan.html', bytes: new TextEncoder().encode(page) };
}

/** A living plan that begins with a design and lets others be chosen. */
export function livingPage(
  made: Made,
  designs: readonly LivingDesign[],
  viewer: string,
  { page, engine, renderer }: LivingScripts,
): string {
  const { model, version, shop, format, curves, projection, drawingUnits, printScale } = made.request;
  const start = startOf(made);
  const living: LivingData = {
    version,
    patience: PATIENCE,
    designs,
    start,
    written: {
      format,
      curves,
      ...(projection && { projection }),
      ...(drawingUnits && { drawingUnits }),
      ...(printScale && { printScale }),
    },
    form: sizeForm(model, start.given, start.units, toolsOf(shop)),
  };
  const { data, papers } = toldOnPage(made);
  return previewPage(data, viewer, stillOf(made), papers, {
    policy: POLICY,
    style: LIVING_STYLE,
    controls: LIVING_CONTROLS,
    scripts: `<script id="living" type="application/json">${inScript(living)}</script>
${packed('engine', engine)}${renderer === undefined ? '' : packed('renderer', renderer)}<script>${page.replaceAll('</script', '<\\/script')}</script>
`,
  });
}

const packed = (id: string, text: string): string =>
  `<script id="${id}" type="text/plain">${text}</script>\n`;

/** A design as it is made, in words that read back as the very same sizes. */
function startOf({ request: { model, values, units, given = [], shop, bush } }: Made): LivingState {
  const texts = given.flatMap((name) => {
    const value = values[name];
    const meta = parameterMeta(name, model.parameters.shape[name]!);
    return typeof value === 'number' || typeof value === 'string' || typeof value === 'boolean'
      ? [[optionName(name), exactText(meta, value, units)] as const]
      : [];
  });
  const usual = JSON.stringify({ ...shop, name: '' }) === JSON.stringify({ ...builtInShop(units), name: '' });
  return {
    design: model.name,
    given: Object.fromEntries(texts),
    units,
    ...(bush !== undefined && { bush }),
    ...(!usual && { shop: { name: shop.name, text: shopExample(units, shop) } }),
  };
}
