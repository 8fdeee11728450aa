import type { PreviewData } from '../viewer/index.js';
import { svgText } from './svg.js';

/** Nothing from anywhere: the page holds all it needs. */
const POLICY = "default-src 'none'; script-src 'unsafe-inline'; style-src 'unsafe-inline'; img-src data:";

const STYLE = `
:root { --paper: #f1ede4; --sheet: #fbf9f4; --ink: #26221c; --soft: #6b6355; --line: #cfc6b4; --mark: #b3431f; }
:root[data-theme="dark"] { --paper: #20242a; --sheet: #292e35; --ink: #ece6da; --soft: #a9a294; --line: #434a54; --mark: #f08a63; }
* { box-sizing: border-box; }
body { margin: 0; font: 15px/1.45 "DejaVu Sans", Verdana, sans-serif; color: var(--ink); background: var(--paper); }
main { display: grid; grid-template-columns: minmax(0, 1fr) 23rem; height: 100vh; }
#stage { position: relative; min-width: 0; min-height: 0; }
#view { width: 100%; height: 100%; display: block; touch-action: none; outline-offset: -3px; }
#still { display: none; padding: 1rem; height: 100%; }
#still svg { width: 100%; height: 100%; background: #fff; }
[data-flat] #view, [data-flat] .live { display: none; }
[data-flat] #still { display: block; }
#views { position: absolute; left: .75rem; bottom: .75rem; right: .75rem; display: flex; flex-wrap: wrap; gap: .35rem; }
#panel { background: var(--sheet); border-left: 1px solid var(--line); overflow-y: auto; padding: 1rem 1.1rem 2rem; }
h1 { font-size: 1.25rem; margin: 0; } h2 { font-size: .95rem; margin: 1.3rem 0 .35rem; }
p { margin: .25rem 0; } .soft { color: var(--soft); font-size: .82rem; }
ul { list-style: none; margin: 0; padding: 0; }
button, select { font: inherit; color: inherit; background: var(--sheet); border: 1px solid var(--line); border-radius: 3px; padding: .3rem .65rem; cursor: pointer; }
button:hover, button:focus-visible { border-color: var(--mark); }
li button { width: 100%; text-align: left; border-color: transparent; border-left: 3px solid var(--line); border-radius: 0; margin: .1rem 0; }
li button span { display: block; font-size: .8rem; color: var(--soft); }
li button.lit { border-left-color: var(--mark); background: color-mix(in srgb, var(--mark) 12%, transparent); }
#findings strong { color: var(--mark); }
label { display: grid; grid-template-columns: 8.2rem 1fr; gap: .5rem; align-items: center; margin: .3rem 0; }
label.tick { grid-template-columns: auto 1fr; }
input[type=range] { width: 100%; accent-color: var(--mark); }
#told { min-height: 2.6rem; border-left: 3px solid var(--mark); padding-left: .6rem; margin-top: .6rem; font-size: .88rem; }
kbd { display: inline-block; min-width: 1.6rem; text-align: center; border: 1px solid var(--line); border-radius: 3px; padding: 0 .3rem; font: inherit; font-size: .8rem; }
#keys { columns: 2; font-size: .8rem; color: var(--soft); }
.steps { display: flex; gap: .35rem; } .head { display: flex; justify-content: space-between; gap: .5rem; align-items: start; }
@media (max-width: 760px) {
  main { grid-template-columns: minmax(0, 1fr); grid-template-rows: 58vh auto; height: auto; }
  #panel { border-left: 0; border-top: 1px solid var(--line); }
  #keys { columns: 1; }
}
@media (prefers-reduced-motion: no-preference) { button { transition: border-color .15s; } }
`;

/** The eye's places, in the order of the number keys. */
const VIEWS = ['corner', 'front', 'right', 'back', 'top', 'below'];

/**
 * The preview as one HTML file that opens from a disk with no network.
 *
 * @param data what is shown
 * @param viewer the packed script
 * @param still an SVG picture for browsers without WebGL
 */
export function previewPage(data: PreviewData, viewer: string, still: string): string {
  const views = VIEWS.map((name) => `<button type="button" data-view="${name}">${name}</button>`).join('');
  return `<!doctype html>
<html lang="en" data-theme="light">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${POLICY}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>${svgText(data.title)}: preview</title>
<link rel="icon" href="data:,">
<style>${STYLE}</style>
</head>
<body>
<main>
<section id="stage" aria-label="The piece in space">
<canvas id="view" tabindex="0" role="img" aria-label="${svgText(data.title)} as solids; the lists beside it say the same in words. Arrow keys turn it."></canvas>
<div id="still">${still}</div>
<div id="views" class="live" role="group" aria-label="Look from">${views}</div>
</section>
<section id="panel" aria-label="About the piece">
<div class="head"><div><h1>${svgText(data.title)}</h1><p id="size" class="soft"></p><p class="soft">revision ${svgText(data.revision)}</p></div><button type="button" id="theme">Dark</button></div>
<p id="told" role="status" aria-live="polite"></p>
<div class="live">
<h2>Look</h2>
<label>drawn apart<input id="apart" type="range" min="0" max="1" step="0.01" value="0"></label>
<label>section plane<select id="axis"><option value="">none</option><option value="0">across the width</option><option value="1">across the depth</option><option value="2">level</option></select></label>
<label>its place<input id="cut" type="range" min="0" max="1" step="0.005" value="0.5"></label>
<label class="tick"><input id="see-through" type="checkbox">see through boards</label>
<h2>Putting it together</h2>
<p id="step-text"></p>
<div class="steps"><button type="button" id="before">step before</button><button type="button" id="after">step after</button></div>
<label>along the step<input id="along" type="range" min="0" max="1" step="0.01" value="1"></label>
</div>
<h2>Findings</h2><ul id="findings"></ul>
<h2>Boards and hardware</h2><ul id="boards"></ul>
<h2>Joints, with clearances measured on the solids</h2><ul id="joints"></ul>
<h2>Caution</h2>${data.cautions.map((text) => `<p class="soft">${svgText(text)}</p>`).join('')}
<div class="live"><h2>Keys</h2><ul id="keys"></ul></div>
<noscript><p>The picture can be turned only with scripts allowed; the drawings in the plan show the same.</p></noscript>
</section>
</main>
<script id="design" type="application/json">${JSON.stringify(data).replaceAll('<', '\\u003c')}</script>
<script>${viewer.replaceAll('</script', '<\\/script')}</script>
</body>
</html>
`;
}
