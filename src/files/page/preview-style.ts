/** Colours of paper and pencil by day and of slate by night, told apart by more than their hue; our own choice. */
const COLOURS = `
:root { --paper: #efebe2; --sheet: #fbf9f4; --ink: #26221c; --soft: #665e50; --line: #cdc4b2; --mark: #a83a1b; --edge: #2b2620; --floor: #d8d0c0; --error: #a3241a; --warning: #7a5200; --sound: #2c6143; color-scheme: light; }
:root[data-theme="dark"] { --paper: #1f2328; --sheet: #282d33; --ink: #ece6da; --soft: #b3ab9c; --line: #454c55; --mark: #f39a74; --edge: #0b0d10; --floor: #31373f; --error: #ff9c8c; --warning: #e6c067; --sound: #94cfa8; color-scheme: dark; }`;

const PAGE = `
* { box-sizing: border-box; } [hidden] { display: none !important; }
html { height: 100%; }
body { margin: 0; height: 100%; font: 15px/1.45 "DejaVu Sans", Verdana, sans-serif; color: var(--ink); background: var(--paper); }
main { display: grid; grid-template-columns: minmax(0, 1fr) 25rem; height: 100vh; height: 100dvh; }
h1 { font-size: 1.25rem; line-height: 1.25; margin: 0; } h2 { font-size: .95rem; margin: 1.4rem 0 .4rem; padding-top: .7rem; border-top: 1px solid var(--line); }
p { margin: .25rem 0; } .soft { color: var(--soft); font-size: .82rem; }
ul, ol { margin: 0; padding: 0; } .rows, #keys { list-style: none; }
button, select { font: inherit; color: inherit; background: var(--sheet); border: 1px solid var(--line); border-radius: 3px; padding: .3rem .65rem; cursor: pointer; }
select { min-width: 0; }
button:hover:enabled { border-color: var(--mark); } button:disabled { color: var(--soft); border-style: dashed; cursor: default; } button[aria-pressed="true"] { background: var(--ink); color: var(--sheet); border-color: var(--ink); }
:focus-visible { outline: 2px solid var(--mark); outline-offset: 1px; } #view:focus-visible { outline-offset: -4px; }
label { display: grid; grid-template-columns: 8rem minmax(0, 1fr); gap: .5rem; align-items: center; margin: .3rem 0; }
label.tick { grid-template-columns: auto 1fr; }
input[type=range] { width: 100%; accent-color: var(--mark); } input[type=checkbox] { accent-color: var(--mark); width: 1.05rem; height: 1.05rem; }
kbd { display: inline-block; min-width: 1.6rem; text-align: center; border: 1px solid var(--line); border-radius: 3px; padding: 0 .3rem; font: inherit; font-size: .8rem; }`;

const PICTURE = `
#stage { position: relative; min-width: 0; min-height: 0; overflow: hidden; background: var(--paper); }
#view, #over { position: absolute; inset: 0; width: 100%; height: 100%; display: block; }
#view { touch-action: none; cursor: grab; } #view:active { cursor: grabbing; }
#over { pointer-events: none; }
#over line { stroke: var(--ink); stroke-width: 1; } #over .end { fill: var(--ink); }
#over text { font-size: 12.5px; fill: var(--ink); stroke: var(--paper); stroke-width: 4px; paint-order: stroke; stroke-linejoin: round; }
#over .span { stroke: var(--mark); stroke-width: 2; } #over .spot { fill: var(--mark); }
#over .mark { fill: none; stroke: var(--mark); stroke-width: 2.5; }
#still { display: none; position: absolute; inset: 3rem 1rem 1rem; }
#still svg { width: 100%; height: 100%; }
[data-flat] #view, [data-flat] #over, [data-flat] .live { display: none !important; }
[data-flat] #still { display: block; }
#told { position: absolute; top: 0; left: 0; right: 0; margin: 0; padding: .55rem .9rem; font-size: .9rem; pointer-events: none; }
#told:not(:empty) { background: color-mix(in srgb, var(--sheet) 88%, transparent); border-bottom: 1px solid var(--line); }
#under { position: absolute; transform: translate(14px, 14px); padding: .1rem .45rem; font-size: .82rem; background: var(--ink); color: var(--paper); border-radius: 2px; pointer-events: none; white-space: nowrap; }
#under:empty { display: none; } #under[data-left] { transform: translate(calc(-100% - 10px), 14px); }
#bars { position: absolute; left: .75rem; bottom: .75rem; right: .75rem; display: grid; gap: .35rem; pointer-events: none; }
#bars > div { display: flex; flex-wrap: wrap; gap: .35rem; } #bars button { pointer-events: auto; }`;

const PANEL = `
#panel { background: var(--sheet); border-left: 1px solid var(--line); overflow-y: auto; padding: 1rem 1.1rem 2rem; overflow-wrap: anywhere; min-height: 0; }
.head { display: flex; gap: .4rem; align-items: start; margin-bottom: .3rem; } .head > div { display: flex; flex: 1 1 auto; flex-wrap: wrap; gap: .4rem; align-items: center; } .head > button { flex: none; } #room { display: none; }
#verdict { padding: .1rem .6rem; border-radius: 1rem; font-weight: bold; font-size: .85rem; border-width: 2px; }
[data-level=error] { --level: var(--error); } [data-level=warning] { --level: var(--warning); } [data-level=sound] { --level: var(--sound); } [data-level=note] { --level: var(--soft); }
#verdict { color: var(--level); border-color: var(--level); } .findings strong { color: var(--level); }
.rows button { display: block; width: 100%; text-align: left; border: 0; border-left: 4px solid transparent; border-radius: 0; margin: .1rem 0; padding: .35rem .5rem; }
.rows button span { display: block; font-size: .8rem; color: var(--soft); }
.rows i { display: inline-block; width: .8em; height: .8em; margin-right: .5em; border: 1px solid var(--line); }
.rows button[data-lit], .rows button:hover { background: color-mix(in srgb, var(--mark) 8%, transparent); }
.rows button[aria-current] { border-left-color: var(--mark); background: color-mix(in srgb, var(--mark) 12%, transparent); }
.rows button[data-lit] span, .rows button:hover span { color: var(--ink); }
.paper { margin: .4rem 0; } .paper summary { cursor: pointer; padding: .3rem 0; } .paper h3, .paper h4 { font-size: .9rem; margin: 1rem 0 .3rem; } .paper p, .paper ul { font-size: .82rem; } .paper ul { padding-left: 1.1rem; }
.table { overflow-x: auto; margin: .4rem 0; } .table table { border-collapse: collapse; font-size: .78rem; overflow-wrap: normal; } .table meter { display: block; } .table th, .table td { text-align: left; vertical-align: top; border: 1px solid var(--line); padding: .2rem .4rem; }
#keys { columns: 2; font-size: .8rem; color: var(--soft); } #keys li { break-inside: avoid; margin: .15rem 0; }
.bar { display: flex; flex-wrap: wrap; gap: .35rem; margin: .35rem 0; }`;

/** On a phone the picture and the lists share the screen, one above the other: neither covers the other. */
const SMALL = `
@media (max-width: 760px) {
  main { grid-template: minmax(0, 58fr) minmax(0, 42fr) / minmax(0, 1fr); } main[data-room] { grid-template-rows: minmax(0, 26fr) minmax(0, 74fr); }
  #stage { border-bottom: 1px solid var(--line); } #panel { border-left: 0; padding: .6rem .9rem 2rem; } #keys { columns: 1; } #room { display: inline-block; }
  #view, #over { height: calc(100% - 6.2rem); } #bars { left: .35rem; right: .35rem; bottom: .35rem; gap: .3rem; } #bars > div { flex-wrap: nowrap; gap: .2rem; } #bars button { flex: 1 1 auto; padding: .3rem .1rem; font-size: .8rem; min-width: 44px; }
  main[data-room] #views { display: none; } main[data-room] :is(#view, #over) { height: calc(100% - 3.2rem); }
  #told { font-size: .8rem; padding: .35rem .6rem; } .head > button { padding: .3rem .5rem; font-size: .85rem; }
}
@media (max-height: 480px) and (min-width: 600px) { main { grid-template-columns: minmax(0, 1fr) 20rem; } }
@media (pointer: coarse) { .paper summary { min-height: 44px; padding: .6rem 0; } button, select, #verdict { min-height: 44px; } #verdict { padding: .1rem .9rem; border-radius: 22px; } input[type=range] { height: 44px; } label.tick { min-height: 44px; } input[type=checkbox] { width: 1.5rem; height: 1.5rem; } }`;

/** On paper: the picture as it is seen, then all that is told, in ink on white. */
const PRINT = `
@media print {
  :root, :root[data-theme="dark"] { --paper: #fff; --sheet: #fff; --ink: #000; --soft: #333; --line: #999; --mark: #8c2f14; --edge: #000; --floor: #ccc; --error: #8c1a12; --warning: #5c3d00; --sound: #1d4a31; color-scheme: light; }
  @page { margin: 14mm; } html, body { height: auto; } body { font-size: 10.5pt; }
  main { display: block; height: auto; } #stage { height: 110mm; overflow: visible; } #panel { overflow: visible; border: 0; padding: 0; min-height: auto; }
  #view, #over { height: 100%; } #view { object-fit: contain; }
  #told, #under, #bars, #room, #theme, #panel .live, .paper:not([open]), [data-part=papers]:not(:has([open])) { display: none !important; }
  :is([data-part=boards], [data-part=joints], [data-part=hardware]) .rows { columns: 2; column-gap: 10mm; } .rows button { overflow-wrap: normal; }
  .rows button, #verdict { background: none !important; } .rows button { border: 0; padding: .1rem 0; } .rows li, tr { break-inside: avoid; } h2, h3, summary { break-after: avoid; } .paper summary { list-style: none; font-weight: bold; } .table { overflow: visible; }
  .rows i { print-color-adjust: exact; -webkit-print-color-adjust: exact; }
}`;

/** How the page looks. */
export const PREVIEW_STYLE = `${COLOURS}${PAGE}${PICTURE}${PANEL}${SMALL}${PRINT}
`;
