/** How the page looks: a workshop's paper and pencil by day, slate by night. Our own choice. */
export const PREVIEW_STYLE = `
:root { --paper: #efebe2; --sheet: #fbf9f4; --ink: #26221c; --soft: #665e50; --line: #cdc4b2; --mark: #a83a1b; --edge: #2b2620; --floor: #d8d0c0; color-scheme: light; }
:root[data-theme="dark"] { --paper: #1f2328; --sheet: #282d33; --ink: #ece6da; --soft: #b3ab9c; --line: #454c55; --mark: #f39a74; --edge: #0b0d10; --floor: #31373f; color-scheme: dark; }
* { box-sizing: border-box; }
html { height: 100%; }
body { margin: 0; height: 100%; font: 15px/1.45 "DejaVu Sans", Verdana, sans-serif; color: var(--ink); background: var(--paper); }
main { display: grid; grid-template-columns: minmax(0, 1fr) 25rem; height: 100vh; height: 100dvh; }
#stage { position: relative; min-width: 0; min-height: 0; overflow: hidden; background: var(--paper); }
#view, #over { position: absolute; inset: 0; width: 100%; height: 100%; display: block; }
#view { touch-action: none; cursor: grab; } #view:active { cursor: grabbing; }
#over { pointer-events: none; }
#over line { stroke: var(--ink); stroke-width: 1; } #over .end { fill: var(--ink); }
#over text { font-size: 12.5px; fill: var(--ink); stroke: var(--paper); stroke-width: 4px; paint-order: stroke; stroke-linejoin: round; }
#over .mark { fill: none; stroke: var(--mark); stroke-width: 2.5; }
#still { display: none; position: absolute; inset: 3rem 1rem 1rem; }
#still svg { width: 100%; height: 100%; }
[data-flat] #view, [data-flat] #over, [data-flat] .live { display: none !important; }
[data-flat] #still { display: block; }
#told { position: absolute; top: 0; left: 0; right: 0; margin: 0; padding: .55rem .9rem; font-size: .9rem; pointer-events: none; }
#told:not(:empty) { background: color-mix(in srgb, var(--sheet) 88%, transparent); border-bottom: 1px solid var(--line); }
#under { position: absolute; transform: translate(14px, 14px); padding: .1rem .45rem; font-size: .82rem; background: var(--ink); color: var(--paper); border-radius: 2px; pointer-events: none; white-space: nowrap; }
#under:empty { display: none; } #under[data-left] { transform: translate(calc(-100% - 10px), 14px); }
#views { position: absolute; left: .75rem; bottom: .75rem; right: .75rem; display: flex; flex-wrap: wrap; gap: .35rem; pointer-events: none; }
#views > * { pointer-events: auto; }
#theme { flex: none; }
#panel { background: var(--sheet); border-left: 1px solid var(--line); overflow-y: auto; padding: 1rem 1.1rem 2rem; overflow-wrap: anywhere; }
h1 { font-size: 1.25rem; line-height: 1.25; margin: 0 0 .2rem; } h2 { font-size: .95rem; margin: 1.4rem 0 .4rem; padding-top: .7rem; border-top: 1px solid var(--line); }
p { margin: .25rem 0; } .soft { color: var(--soft); font-size: .82rem; }
ul, ol { margin: 0; padding: 0; } .rows, #keys { list-style: none; } .plain { padding-left: 1.1rem; font-size: .82rem; color: var(--soft); }
button, select { font: inherit; color: inherit; background: var(--sheet); border: 1px solid var(--line); border-radius: 3px; padding: .3rem .65rem; cursor: pointer; }
select { min-width: 0; }
button:hover { border-color: var(--mark); }
:focus-visible { outline: 2px solid var(--mark); outline-offset: 1px; } #view:focus-visible { outline-offset: -4px; }
.rows button { display: block; width: 100%; text-align: left; border: 0; border-left: 4px solid transparent; border-radius: 0; margin: .1rem 0; padding: .35rem .5rem; }
.rows button span { display: block; font-size: .8rem; color: var(--soft); }
.rows i { display: inline-block; width: .8em; height: .8em; margin-right: .5em; border: 1px solid var(--line); }
.rows button[data-lit], .rows button:hover { background: color-mix(in srgb, var(--mark) 11%, transparent); }
.rows button[aria-current] { border-left-color: var(--mark); background: color-mix(in srgb, var(--mark) 16%, transparent); }
#findings strong { color: var(--mark); }
label { display: grid; grid-template-columns: 8rem minmax(0, 1fr); gap: .5rem; align-items: center; margin: .3rem 0; }
label.tick { grid-template-columns: auto 1fr; }
input[type=range] { width: 100%; accent-color: var(--mark); } input[type=checkbox] { accent-color: var(--mark); width: 1.05rem; height: 1.05rem; }
kbd { display: inline-block; min-width: 1.6rem; text-align: center; border: 1px solid var(--line); border-radius: 3px; padding: 0 .3rem; font: inherit; font-size: .8rem; }
.paper { margin: .4rem 0; } .paper summary { cursor: pointer; padding: .3rem 0; } .paper h3, .paper h4 { font-size: .9rem; margin: 1rem 0 .3rem; } .paper p, .paper ul { font-size: .82rem; } .paper ul { padding-left: 1.1rem; }
.table { overflow-x: auto; margin: .4rem 0; } .table table { border-collapse: collapse; font-size: .78rem; overflow-wrap: normal; } .table th, .table td { text-align: left; vertical-align: top; border: 1px solid var(--line); padding: .2rem .4rem; }
#keys { columns: 2; font-size: .8rem; color: var(--soft); } #keys li { break-inside: avoid; margin: .15rem 0; }
.bar { display: flex; flex-wrap: wrap; gap: .35rem; margin: .35rem 0; } .head { display: flex; justify-content: space-between; gap: .5rem; align-items: start; }
@media (max-width: 760px) {
  main { display: block; height: auto; }
  #stage { position: sticky; top: 0; height: 54vh; height: 54dvh; z-index: 1; border-bottom: 1px solid var(--line); }
  #theme { flex: none; }
#panel { border-left: 0; overflow: visible; } #keys { columns: 1; }
  .rows li { scroll-margin-top: 56vh; }
  #views { flex-wrap: nowrap; overflow-x: auto; } #views button { padding: .3rem .5rem; font-size: .85rem; } #told { font-size: .8rem; padding: .35rem .6rem; }
}
@media (max-height: 480px) and (min-width: 600px) { main { grid-template-columns: minmax(0, 1fr) 20rem; } }
@media (pointer: coarse) { .paper summary { min-height: 44px; } button, select { min-height: 44px; } input[type=range] { height: 36px; } label.tick { min-height: 40px; } input[type=checkbox] { width: 1.4rem; height: 1.4rem; } }
@media print { main { display: block; height: auto; } #stage { height: 120mm; } #theme { flex: none; }
#panel { overflow: visible; border: 0; } .live { display: none; } }
`;
