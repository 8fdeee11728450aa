/** The controls of a living plan; its script fills and shows them. */
export const LIVING_CONTROLS = `<p id="standing" data-level="waiting" hidden><strong id="verdict-now" role="status" aria-live="polite">Starting…</strong></p>
<div id="living-controls" hidden>
<button type="button" id="cure" hidden>Look for one size that ends the errors</button>
<div id="refusal" class="refusal" role="alert" hidden></div>
<div id="link-refusal" class="refusal" role="alert" hidden></div>
<div id="choose" hidden><label>piece<select id="piece"></select></label></div>
<details id="write" class="paper" hidden><summary>The piece in its own words</summary>
<p class="soft" id="text-help">Change the text, and the picture follows. What is wrong is told at its line. Ctrl-Space lists the words that fit at the cursor; arrows choose, Enter takes, Escape closes.</p>
<div class="editor"><pre id="lines" aria-hidden="true"></pre><textarea id="text" aria-label="The file of the piece" aria-describedby="text-help" aria-autocomplete="list" aria-haspopup="listbox" aria-controls="words" autocapitalize="none" autocomplete="off" spellcheck="false" wrap="off" rows="18"></textarea><ul id="words" role="listbox" aria-label="Words that fit at the cursor" tabindex="0" hidden></ul></div>
<p class="soft" id="words-told" role="status"></p>
<div class="bar"><button type="button" id="words-here">Words that fit here</button><button type="button" id="save-text">Save this text</button><button type="button" id="text-back">Back to the text as it came</button></div>
</details>
<h2 id="sizes-title">Sizes</h2>
<div class="bar"><button type="button" id="undo" disabled>Undo</button><button type="button" id="redo" disabled>Redo</button><button type="button" id="reset" disabled>As published</button><label class="units">units<select id="units"><option value="mm">mm</option><option value="in">inches</option></select></label></div>
<p class="soft" id="ranges-note"></p>
<form id="sizes-form" autocomplete="off"></form>
<details id="changed" class="paper"><summary>What changed</summary><div id="changes"><p>Nothing: it is as it was published.</p></div></details>
<h2>Save</h2>
<p class="soft" id="save-note" role="status"></p>
<div class="bar"><button type="button" data-save="A4">Plan on A4</button><button type="button" data-save="Letter">Plan on Letter</button><button type="button" data-save="all">Everything as ZIP</button><button type="button" data-save="list">One file at a time</button></div>
<label class="tick" id="force-tick" hidden><input id="force" type="checkbox">save what wood is cut from although a check failed; each file says so</label>
<ul id="single-files" class="plain"></ul>
<div class="bar"><button type="button" id="copy-link">Link to these sizes</button><button type="button" id="save-yaml">Sizes for the command line</button></div>
<label class="tick"><input id="link-shop" type="checkbox">my shop in the link too; a text written here is always in it</label>
<label id="link-label" hidden>link<input id="link" type="text" readonly></label>
<details id="shop-told" class="paper"><summary>Your shop</summary>
<p class="soft">What is at hand: router, cutters, boards, clamps, glue. What you leave out makes the figures that need it not verified, never passed. It goes into a link only where you say so.</p>
<form id="shop-form" autocomplete="off"></form>
<div class="bar"><button type="button" id="usual-shop">The shop of this page</button><button type="button" id="save-shop">Save as shop.yaml</button></div>
<label class="tick"><input id="keep-shop" type="checkbox">keep it in this browser for the next time</label>
</details>
</div>`;
