import { makeBoard } from '../../board/index.js';
import { INCH, type Say, trimmed } from '../../length/index.js';
import { DEPTH_BLOCK } from '../practice/index.js';
import type { AidDraft, HeldDraft } from './aid-draft.js';
import type { Bearing, Lean } from './bearing.js';
import { guideBoard } from './guide.js';
import type { Holding, RailBearing, Refusal } from './holding.js';
import { measuredAt } from './measured.js';
import { type Resting, restingOf } from './resting.js';
import { type SupportBlock, supportBoard, supportPlace } from './support.js';
import type { AtHand, Way } from './ways.js';
import { wedgeBoard, wedgePlace } from './wedge.js';
import { windowBoard } from './window.js';

/** A way with everything it needs, as a holding and the drafts of its aids; its mortise can be measured from something. */
export function heldDraft(way: Way, refused: readonly Refusal[], material: string, hand: AtHand): HeldDraft {
  const { work, travelling } = way;
  const { mortise, stage } = work;
  const { say } = hand;
  const resting = restingOf(way, hand);
  const drafts: AidDraft[] = [];
  const use = (draft: AidDraft): string => {
    drafts.push(draft);
    return draft.key;
  };
  const rail = (bearing: Bearing): RailBearing => {
    const { face, toFace, toRail } = bearing;
    if (!bearing.wedge) return { face, toFace, toRail };
    const lean = { ...bearing.wedge, length: wedgeRoom(bearing.wedge, resting.supports) };
    const { angleDeg, thickEnd, thicknessAtMouth } = lean;
    const aid = use(wedgeDraft(lean, material, hand));
    const place = wedgePlace(mortise.at, bearing, lean);
    return { face, toFace, toRail, wedge: { aid, angleDeg, thickEnd, thicknessAtMouth, place } };
  };
  const { guide, window } = way;
  const measured = measuredAt(work, way, resting.horn?.end) ?? measuredAt(work, way)!;
  const railed = way.near !== undefined || way.far !== undefined;
  const near = way.near && rail(way.near);
  const far = way.far && rail(way.far);
  const holding: Holding = {
    board: stage.board.id,
    mortise,
    stage: stage.name,
    way: way.way,
    ...(near && { near }),
    ...(far && { far }),
    ...(guide && {
      guide: {
        aid: use({
          key: `guide ${guide.length}`,
          wanted: 'guide-board',
          kind: 'guide board',
          what: 'straight board to guide the router',
          make: (id) => guideBoard(id, guide, material),
        }),
        offset: guide.offset,
        side: guide.side,
        place: guide.place,
      },
    }),
    ...(window && {
      window: {
        aid: use({
          key: `window ${window.length} ${window.width} ${window.along} ${window.across} ${window.sheet}`,
          wanted: `template-${asId(mortise.length, say)}x${asId(mortise.width, say)}`,
          kind: 'windowed template',
          what: `template for a ${say.units === 'mm' ? `${trimmed(window.bush.outside, 2)} mm` : say.tool(window.bush.outside)} guide bush`,
          make: (id) => windowBoard(id, window),
        }),
        length: window.length,
        width: window.width,
        bush: window.bush.outside,
        place: window.place,
      },
    }),
    ...measured,
    travelling: { what: travelling.what, along: travelling.along },
    stopDistance: way.stopDistance,
    stopsBeyond: resting.stopsBeyond,
    depthBlock: use(depthDraft(mortise.depth, material, say)),
    supports: resting.supports.map((block) => ({
      aid: use(supportDraft(block, material, say)),
      place: supportPlace(mortise.at, block),
      why: WHY[block.side],
    })),
    ...(resting.horn && { horn: resting.horn }),
    raised: railed ? Math.max(0, hand.jig.near.height - work.below) : 0,
    refused,
    broken: way.broken,
  };
  return { holding, drafts };
}

const WHY: Readonly<Record<SupportBlock['side'], string>> = {
  start: 'the plate would tip at the start of the travel',
  end: 'the plate would tip at the end of the travel',
  near: 'the plate would rock over a narrow edge',
  far: 'the plate would rock over a narrow edge',
};

/** A wedge ends before it runs into a support block. Only its length along the mortise gives way. */
function wedgeRoom(lean: Lean, supports: Resting['supports']): number {
  if (lean.thickEnd === 'start' || lean.thickEnd === 'end') return lean.length;
  // a block's top and bottom edges: the nearer one is where its outline starts or is longest
  const rooms = supports
    .filter((block) => block.side === 'start' || block.side === 'end')
    .map(({ place }) => Math.abs(place.origin[0]));
  return Math.min(lean.length, ...rooms.map((room) => 2 * room));
}

function wedgeDraft(lean: Lean, material: string, { say }: AtHand): AidDraft {
  const { angleDeg, height, length, thin } = lean;
  const taper = lean.thickEnd === 'up' || lean.thickEnd === 'down' ? 'height' : 'length';
  const angle = Number(angleDeg.toFixed(6));
  return {
    key: `wedge ${taper} ${angle} ${[height, length, thin].map((size) => size.toFixed(6)).join(' ')}`,
    wanted: `wedge-${inId(angleDeg)}`,
    kind: 'wedge',
    what: `${say.angle(angleDeg)} wedge, tapered over its ${taper}`,
    make: (id) => wedgeBoard(id, lean, material),
  };
}

const depthDraft = (depth: number, material: string, say: Say): AidDraft => ({
  key: `depth ${depth.toFixed(6)}`,
  wanted: `depth-block-${asId(depth, say)}`,
  kind: 'depth block',
  what: `depth block ${say.fit(depth)} thick`,
  make: (id) => makeBoard({ id, material, blank: { ...DEPTH_BLOCK, thickness: depth } }),
});

function supportDraft(block: SupportBlock, material: string, say: Say): AidDraft {
  const { length, height, thickness, rise } = block;
  return {
    key: `support ${[length, height, thickness, rise].map((size) => size.toFixed(6)).join(' ')}`,
    wanted: `support-${asId(thickness, say)}x${asId(length + rise, say)}`,
    kind: 'support block',
    what: 'support block, flush with the mouth',
    make: (id) => supportBoard(id, block, material),
  };
}

/** A number as part of a name: `31-2` for 31.2. */
const inId = (value: number): string => trimmed(value, 2).replace('.', '-');

/** A length as part of a name, in the person's units. */
const asId = (mm: number, say: Say): string => inId(say.units === 'mm' ? mm : mm / INCH);
