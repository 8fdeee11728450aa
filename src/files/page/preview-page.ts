import { settledLength } from '../../frame/index.js';
import type { Block } from '../../shop/index.js';
import { KEYS, type PreviewData, VIEWS } from '../../viewer/index.js';
import { html } from '../papers/index.js';
import { svgText } from '../svg/index.js';
import { boardRows, hardwareRows, jointRows, noteRows, stepRows, worryRows } from './preview-lists.js';
import { PREVIEW_STYLE } from './preview-style.js';
import { previewVerdict } from './preview-verdict.js';

/** Nothing from anywhere: the page holds all it needs. */
const POLICY = "default-src 'none'; script-src 'unsafe-inline'; style-src 'unsafe-inline'; img-src data:";

/**
 * The preview as one HTML file that opens from a disk with no network.
 *
 * All that is told stands in the page as text; the script only turns the picture. Without it, or without WebGL, the still
 * picture is seen.
 *
 * @param data what is shown
 * @param viewer the packed script
 * @param still an SVG element
 * @param papers of the bench, by their titles; those not to be cut from are left out
 */
export function previewPage(
  data: PreviewData,
  viewer: string,
  still: string,
  papers: readonly PagePaper[],
  { policy = POLICY, style = '', controls = '', scripts = '' }: PageMore = {},
): string {
  const title = svgText(data.title);
  return `<!doctype html>
<html lang="en" data-theme="light" data-flat="yes">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${policy}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>${title}: preview</title>
<link rel="icon" href="data:,">
<style>${PREVIEW_STYLE}${style}</style>
</head>
<body>
<main>
<section id="stage" aria-label="Picture">
<canvas id="view" class="live" tabindex="0" role="application" aria-roledescription="picture in space" aria-label="${title} as solids. Arrow keys turn it; the lists after it say what it shows." aria-describedby="keys-title"></canvas>
<svg id="over" aria-hidden="true"></svg>
<div id="still">${still}</div>
<span id="under" class="live" aria-hidden="true"></span>
<p id="told" role="status" aria-live="polite"></p>
<div id="bars" class="live"><div id="tools" role="group" aria-label="Tools">${toolButtons(data, scripts === '')}</div><div id="views" role="group" aria-label="Look from">${viewButtons()}</div></div>
</section>
<section id="panel" aria-label="About the piece">
${panelHtml(data, papers, controls)}
</section>
</main>
<script id="design" type="application/json">${inScript(data)}</script>
<script id="viewer">${viewer.replaceAll('</script', '<\\/script')}</script>
${scripts}</body>
</html>
`;
}

/** What a page has beside the preview. */
export interface PageMore {
  readonly policy?: string;
  readonly style?: string;
  /** Stands before all that is told of the piece. */
  readonly controls?: string;
  /** Elements after the viewer's script; the address is theirs to read, so that the page makes no links to what is seen. */
  readonly scripts?: string;
}

/** Data as they stand in a script element. */
export const inScript = (data: unknown): string =>
  JSON.stringify(data, settledFigures).replaceAll('<', '\\u003c');

/** Without the last digits, in which engines differ. */
const settledFigures = (_: string, value: unknown): unknown =>
  typeof value === 'number' ? settledLength(value) : value;

/** All that is told of a piece. What hangs on its sizes stands in elements with `data-part`, so that it can be told anew. */
export const panelHtml = (
  data: PreviewData,
  papers: readonly PagePaper[],
  controls = '',
): string => `<div class="head"><div><h1>${svgText(data.title)}</h1><span data-part="verdict">${badge(data)}</span></div><button type="button" id="room" aria-pressed="false">larger lists</button><button type="button" id="theme">Dark</button></div>
${controls}
<div data-part="sizes"><p>${data.box.sides.map(({ name, mmText, inchText }) => `${name} ${mmText} = ${svgText(inchText)}`).join('<br>')}</p>
<p class="soft">Revision ${svgText(data.revision)}</p></div>
<h2 id="findings-title" tabindex="-1">Findings</h2><div class="findings" data-part="findings">${worryRows(data)}</div>
${look(data)}
${putTogether(data)}
<div class="findings" data-part="notes">${noteRows(data)}</div>
<h2>Boards</h2><div data-part="boards">${boardRows(data)}</div>
<div data-part="joints">${data.joints.length > 0 ? `<h2>Joints, with the clearances measured on the solids</h2>${jointRows(data)}` : ''}</div>
<div data-part="hardware">${data.pieces.some(({ role }) => role === 'hardware') ? `<h2>Hardware</h2>${hardwareRows(data)}` : ''}</div>
<div data-part="papers">${papers.length > 0 ? `<h2>Papers for the bench</h2>${papers.map(paperOf).join('')}` : ''}</div>
<h2>Caution</h2><div data-part="caution">${data.cautions.map((text) => `<p class="soft">${svgText(text)}</p>`).join('')}</div>
<div class="live"><h2 id="keys-title">Keys for the picture</h2><ul id="keys">${keyRows()}</ul><p class="soft">Drag to turn, with the right button or two fingers to move it; use the wheel or pinch to zoom.</p></div>`;

/** The verdict, and the way to what was found. */
function badge({ findings }: PreviewData): string {
  const { level, text } = previewVerdict(findings);
  return `<button type="button" id="verdict" data-level="${level}" aria-label="Verdict: ${text}; go to the findings">${text}</button>`;
}

/** A paper that is opened in the page; its own title stands over it. */
export interface PagePaper {
  readonly title: string;
  readonly blocks: readonly Block[];
}

const paperOf = ({ title, blocks }: PagePaper): string =>
  `<details class="paper"><summary>${svgText(title)}</summary>${html(blocks, 3)}</details>`;

/** The buttons are there in any case: the script looks for them. */
function toolButtons({ steps }: PreviewData, links: boolean): string {
  const none = steps.length > 0 ? '' : ' hidden';
  return `<button type="button" id="play"${none}>play</button><button type="button" id="before" aria-label="step before"${none}>‹</button><button type="button" id="after" aria-label="step after"${none}>›</button><button type="button" id="measure" aria-pressed="false">measure</button><button type="button" id="save" aria-label="save the picture">picture</button>${links ? '<button type="button" id="view-link" aria-label="make a link to what is seen">link</button>' : ''}`;
}

const viewButtons = (): string =>
  Object.keys(VIEWS)
    .map((name) => `<button type="button" data-view="${name}">${name}</button>`)
    .join('');

const keyRows = (): string =>
  Object.values(KEYS)
    .map(({ shown, does }) => `<li><kbd>${shown}</kbd> ${does}</li>`)
    .join('');

const look = (data: PreviewData): string => `<div class="live">
<h2>Look</h2>
<label>drawn apart<input id="apart" type="range" min="0" max="1" step="0.01" value="0"></label>
<label>section plane<select id="axis"><option value="">none</option><option value="0">across the width</option><option value="1">across the depth</option><option value="2">level</option></select></label>
<label>its place<input id="cut" type="range" min="0" max="1" step="0.005" value="0.5"></label>
<p class="soft" id="cut-place"></p>
<label class="tick"><input id="through" type="checkbox">see through boards</label>
<label class="tick"><input id="sizes" type="checkbox">overall sizes</label>
<label class="tick"${data.stands ? '' : ' hidden'}><input id="stands" type="checkbox">how it stands: the line round its feet, and where it tips first</label>
<div class="bar"><button type="button" id="hide">hide the selection</button><button type="button" id="show-all">show all</button></div>
<p class="soft">The lines on the floor are 100 mm apart.</p>
</div>`;

/** The controls are there in any case: the script looks for them. */
const putTogether = (data: PreviewData): string => `<div${data.steps.length > 0 ? '' : ' hidden'}>
<h2>Putting it together</h2>
<div data-part="steps">${stepRows(data)}</div>
<label class="live">along the step<input id="along" type="range" min="0" max="1" step="0.01" value="1"></label>
</div>`;
