/** What the controls of a living plan look like, beside the style of the preview. */
export const LIVING_STYLE = `
/* in sight however far the panel is scrolled */ #standing { position: sticky; top: -1rem; z-index: 2; margin: 0 -.4rem; padding: .7rem .4rem .35rem; background: var(--sheet); } #standing:not([hidden]) { display: flex; gap: .5rem; align-items: baseline; } #standing strong { border-left: 4px solid var(--line); padding-left: .5rem; }
#standing[data-level="sound"] strong { border-color: var(--sound); } #standing[data-level="warning"] strong { border-color: var(--warning); } #standing[data-level="error"] strong { border-color: var(--error); color: var(--error); }
/* of another state */ [data-standing="waiting"] #verdict, [data-ghost] #verdict { visibility: hidden; }
.refusal { border: 2px solid var(--error); border-radius: 3px; padding: .4rem .6rem; margin: .4rem 0; font-size: .88rem; white-space: pre-wrap; }
[data-ghost] #view, [data-ghost] #still { opacity: .32; }
.size { margin: .75rem 0; } .size > label, .size .name { display: block; margin: 0; font-size: .9rem; }
.size .pair { display: grid; grid-template-columns: minmax(0, 1fr) 7.2rem; gap: .6rem; align-items: start; }
.size input[type=text], .size select, #link { width: 100%; min-width: 0; font: inherit; font-size: .88rem; color: inherit; background: var(--paper); border: 1px solid var(--line); border-radius: 3px; padding: .25rem .4rem; }
.size input[aria-invalid=true] { border: 2px solid var(--error); }
.size .slide { padding: 0; } .size .slide input { display: block; margin: 0; }
.band { position: relative; height: 7px; margin: 0 8px; background: var(--line); border-radius: 2px; overflow: hidden; }
.band i { position: absolute; top: 0; bottom: 0; } .band .proved { background: var(--sound); } .band .red { background: repeating-linear-gradient(45deg, var(--error) 0 3px, transparent 3px 5px); }
.size[data-follows] .slide input { opacity: .7; } .size ::placeholder { color: var(--soft); opacity: 1; }
.size .soft { margin: .1rem 0 0; } .size .why { color: var(--mark); font-size: .8rem; margin: .1rem 0 0; white-space: pre-wrap; }
.size .more { display: none; color: var(--soft); font-size: .78rem; margin: .1rem 0 0; white-space: pre-line; } .size:hover .more:not(:empty), .size:focus-within .more:not(:empty) { display: block; }
.size .free { font-size: .78rem; padding: .1rem .4rem; }
.units { display: flex; gap: .3rem; margin: 0; }
.editor { position: relative; display: grid; grid-template-columns: 2.6rem minmax(0, 1fr); border: 1px solid var(--line); } .editor pre, .editor textarea { margin: 0; padding: .4rem; font: 12.5px/1.45 "DejaVu Sans Mono", ui-monospace, monospace; border: 0; }
.editor pre { text-align: right; color: var(--soft); overflow: hidden; user-select: none; } .editor pre b { color: var(--paper); background: var(--error); }
.editor textarea { width: 100%; resize: vertical; background: var(--paper); color: var(--ink); }
#words { position: absolute; z-index: 3; margin: 0; padding: .2rem 0; list-style: none; width: max-content; max-width: min(22rem, calc(100% - 2.6rem)); max-height: 12rem; overflow: auto; background: var(--sheet); color: var(--ink); border: 1px solid var(--line); border-radius: 3px; font-size: .8rem; box-shadow: 0 2px 8px rgb(0 0 0 / .25); } #words li { padding: .2rem .5rem; cursor: pointer; } #words [aria-selected=true] { background: var(--ink); color: var(--sheet); }
#single-files button { font-size: .82rem; padding: .1rem .4rem; margin: .1rem 0; }
#shop-form fieldset, #shop-form .rows { border: 1px solid var(--line); border-radius: 3px; margin: .6rem 0; padding: .4rem .6rem; min-width: 0; } #shop-form legend { font-weight: 600; font-size: .9rem; } #shop-form .soft { font-size: .8rem; margin: .1rem 0 0; } #shop-form .told { white-space: pre-line; }
#shop-form .row { display: grid; grid-template-columns: repeat(auto-fill, minmax(7.5rem, 1fr)); gap: 0 .6rem; align-items: start; } #shop-form .row .size { margin: .25rem 0; } #shop-form button { justify-self: start; align-self: end; font-size: .82rem; padding: .2rem .5rem; margin: .3rem 0; border: 1px solid var(--line); border-radius: 3px; }
#shop-form textarea { width: 100%; font: 12px/1.4 "DejaVu Sans Mono", ui-monospace, monospace; color: var(--ink); background: var(--paper); border: 1px solid var(--line); } #shop-form [aria-invalid=true] { border: 2px solid var(--error); }
@media (pointer: coarse) { #words li { min-height: 44px; padding: .6rem; } .size input[type=text] { min-height: 44px; } #piece, .size select { min-height: 44px; } }
/* on paper: the verdict in whole, and each size as it stands */
@media print {
  [data-part=verdict], #living-controls > :not(#sizes-title, #sizes-form, .refusal, #changed[open]), .size > :is(.soft, .more, .free), .size .slide { display: none !important; }
  #standing { position: static; } .size, #sizes-form .pair { display: flex; justify-content: space-between; gap: .6rem; break-inside: avoid; } #sizes-form { columns: 2; column-gap: 10mm; margin-bottom: .6rem; } .size { flex-wrap: wrap; margin: 0; padding: .08rem 0; border-bottom: 1px dotted var(--line); }
  .size > label { font-size: .82rem; } .size :is(input, select) { width: 11rem !important; min-height: 0 !important; padding: 0 !important; border: 0 !important; background: none !important; appearance: none; text-align: right; text-align-last: right; font-size: .82rem !important; } .size .why { flex-basis: 100%; }
}
`;
