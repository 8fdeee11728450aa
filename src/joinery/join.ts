import { type Board, pocketGap } from '../board/index.js';
import { JoinError } from '../errors.js';
import { angleDeg } from '../frame/index.js';
import { PARALLEL_DEG } from '../tolerances.js';
import { clearOfGrooves } from './clear-of-grooves.js';
import { type Contact, contacts, type Joinable } from './contact.js';
import { type Draft, draftOf } from './draft.js';
import type { Joint, PatchLeft } from './joint.js';
import { type Laid, laidOut } from './layout.js';
import { makeWay } from './make-way.js';
import { checkedOptions, type JoinOptions } from './options.js';
import { jointOf, mortisesIn, pocketsIn, withMortises } from './parts.js';

/** Two boards to be joined, by id. */
export interface JoinRequest {
  readonly a: string;
  readonly b: string;
  readonly options?: JoinOptions;
}

/** What joints made of boards. */
export interface AllJoined {
  /** Every board by its id, with its mortises. */
  readonly boards: ReadonlyMap<string, Board>;
  /** One for every patch that was joined, in the order asked for. */
  readonly joints: readonly Joint[];
  readonly patchesLeft: readonly PatchLeft[];
}

/** What a joint made of two boards. */
export interface Joined {
  readonly a: Board;
  readonly b: Board;
  /** On the largest patch. */
  readonly joint: Joint;
  readonly joints: readonly Joint[];
  readonly patchesLeft: readonly PatchLeft[];
}

/**
 * Joins two boards that touch with loose tenons.
 *
 * The seat is a patch on which they touch; the axis is normal to it unless asked otherwise; the mortises run along its longer
 * side. Both mortises and the tenon come from the same seat, so they are in line by construction. Cuts the boards hold
 * already are kept clear of.
 *
 * @param a one board, standing in the assembly frame
 * @param b the other
 * @param options lengths mm; what is left out follows {@link PRACTICE}
 * @returns both boards with their mortises, and a joint for every patch
 * @throws JoinError `no-contact` when the boards do not touch, `no-room` when no seat is large enough, `join-option`,
 *   `joint-twice` when two joints want the same place
 */
export function join(a: Joinable, b: Joinable, options: JoinOptions = {}): Joined {
  const [idA, idB] = [a.board.id, b.board.id];
  const { boards, joints, patchesLeft } = joinAll(
    new Map([
      [idA, a],
      [idB, b],
    ]),
    [{ a: idA, b: idB, options }],
  );
  return { a: boards.get(idA)!, b: boards.get(idB)!, joint: joints[0]!, joints, patchesLeft };
}

/**
 * Joins boards with loose tenons: every patch of every pair is laid out, then what comes too near makes way, then the
 * mortises are cut.
 *
 * @param standing the boards by id; those named in a request must be there
 * @throws JoinError see {@link join}
 */
export function joinAll(
  standing: ReadonlyMap<string, Joinable>,
  requests: readonly JoinRequest[],
): AllJoined {
  const asked = requests.map((request) => patchesOf(standing, request));
  const first = asked.flatMap(({ laid: one }) => one);
  joinedOnce(first);
  const { laid, gaveWay } = makeWay(first, standing);
  const boards = new Map([...standing].map(([id, { board }]) => [id, board]));
  const joints = laid.map((one, i) => {
    const joint = jointOf(one, gaveWay[i]!);
    for (const which of [0, 1] as const) {
      const id = which === 0 ? joint.a : joint.b;
      boards.set(id, withMortises(boards.get(id)!, mortisesIn(one, joint, which)));
    }
    return joint;
  });
  return { boards, joints, patchesLeft: asked.flatMap(({ left }) => left) };
}

/** Two joints of one pair of boards stand apart from the start: who puts them in one place has said it twice. */
function joinedOnce(laid: readonly Laid[]): void {
  const cut = (one: Laid, board: string) => pocketsIn(one, one.draft.sides[0].board.id === board ? 0 : 1);
  const first = new Map<string, readonly Laid[]>();
  for (const one of laid) {
    const [a, b] = one.draft.sides.map(({ board }) => board.id).toSorted();
    const pair = `${a} and ${b}`;
    const earlier = first.get(pair) ?? [];
    const same = earlier.find((other) =>
      cut(one, a!).some((p) => cut(other, a!).some((q) => pocketGap(p, q) === 0)),
    );
    if (same)
      throw new JoinError(
        'joint-twice',
        `joint ${one.draft.id}: joint ${same.draft.id} joins ${pair} in the same place already: leave one of the two out, or give each its own patches or places`,
      );
    first.set(pair, [...earlier, one]);
  }
}

interface Asked {
  readonly laid: readonly Laid[];
  readonly left: readonly PatchLeft[];
}

/** Lays out every patch of one pair that is asked for and has room. */
function patchesOf(standing: ReadonlyMap<string, Joinable>, request: JoinRequest): Asked {
  const [a, b] = [standing.get(request.a)!, standing.get(request.b)!];
  const options = request.options ?? {};
  const id = options.id ?? `${request.a}/${request.b}`;
  checkedOptions(id, [request.a, request.b], options);
  const touching = contacts(a, b).map((touch) => clearOfGrooves(touch, [a, b], options.depths));
  const chosen = chosenOf(id, touching, options);
  const drafts = chosen.map((touch) => draftOf(id, a, b, touch, options));
  // what is asked for by number must be had; of all patches, one with room is enough
  if (typeof options.patches === 'object')
    return { laid: named(drafts.map((draft) => laidOut(draft))), left: [] };
  const tried = drafts.map((draft, i) => tryOut(draft, chosen[0]!, chosen[i]!));
  const laid = tried.flatMap(({ laid: one }) => (one ? [one] : []));
  if (laid.length === 0) throw tried[0]!.error!;
  return {
    laid: named(laid),
    left: tried.flatMap(({ error }, i) => (error ? [leftOf(request, drafts[i]!, error)] : [])),
  };
}

function chosenOf(id: string, touching: readonly Contact[], { patches }: JoinOptions): readonly Contact[] {
  if (patches === undefined) return touching;
  if (patches === 'largest') return touching.slice(0, 1);
  const missing = patches.find((number) => number > touching.length);
  if (missing !== undefined) {
    throw new JoinError(
      'join-option',
      `joint ${id}: it asks for patch ${missing}, but its boards touch in ${touching.length}: give numbers from 1 to ${touching.length}`,
    );
  }
  return touching.filter((_, i) => patches.includes(i + 1));
}

interface Tried {
  readonly laid?: Laid;
  readonly error?: JoinError;
}

/** Tenons of one joint go in together, so a patch that faces another way than the largest gets none. */
function tryOut(draft: Draft, largest: Contact, touch: Contact): Tried {
  if (angleDeg(largest.plane.z, touch.plane.z) > PARALLEL_DEG) {
    return {
      error: new JoinError(
        'no-room',
        `joint ${draft.id}: this patch faces another way than the largest, and tenons in both could not go in together: join it by its number in patches, as a joint with its own id`,
      ),
    };
  }
  try {
    return { laid: laidOut(draft) };
  } catch (error) {
    if (error instanceof JoinError && error.code === 'no-room') return { error };
    throw error;
  }
}

/** Several patches of one pair are joints of their own: `side/top.1`, `side/top.2`. */
const named = (laid: readonly Laid[]): readonly Laid[] =>
  laid.length === 1
    ? laid
    : laid.map((one, i) => ({ ...one, draft: { ...one.draft, id: `${one.draft.id}.${i + 1}` } }));

const leftOf = ({ a, b }: JoinRequest, draft: Draft, error: JoinError): PatchLeft => ({
  joint: draft.id,
  a,
  b,
  areaMm2: draft.areaMm2,
  length: Math.max(draft.length, draft.width),
  width: Math.min(draft.length, draft.width),
  why: (say) => error.explain(say),
});
