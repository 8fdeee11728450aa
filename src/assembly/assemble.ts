import { JoinError } from '../errors.js';
import { settledFigures } from '../frame/index.js';
import { type JoinRequest, joinAll } from '../joinery/index.js';
import type { Season } from '../movement/index.js';
import { type CaptiveRequest, captiveOf } from './captive.js';
import type { Design, Hardware } from './design.js';
import { fasten } from './fasten.js';
import type { Fastening, FastenRequest } from './fastening.js';
import type { PlacedBoard } from './placed-board.js';

export type { JoinRequest };

/** A design before its joints are cut, its panels put in and its fastenings fitted; lists left out are empty. */
export type DesignSpec = Pick<Design, 'name' | 'title' | 'cutter' | 'boards'> &
  Partial<Omit<Design, 'name' | 'title' | 'cutter' | 'boards' | 'joints' | 'patchesLeft'>> & {
    readonly joints?: readonly JoinRequest[];
    readonly panels?: readonly CaptiveRequest[];
    readonly fasten?: readonly FastenRequest[];
    /** What the wood goes through, for fastenings and panels; a heated room and flat-sawn wood when left out. */
    readonly season?: Season;
  };

/**
 * Cuts every joint into the boards it names, then what is fastened without glue, and finds the grooves of panels. The figures of the
 * design are settled: all that follows from it is the same on every engine.
 *
 * @throws JoinError when a joint names a board that is not there, an id is used twice, or boards do not touch; see
 * {@link fasten} and {@link captiveOf}
 */
export function assemble({
  joints: requests = [],
  panels = [],
  fasten: held = [],
  season,
  ...spec
}: DesignSpec): Design {
  const standing = new Map<string, PlacedBoard>();
  for (const placed of spec.boards) {
    if (standing.has(placed.board.id)) {
      throw new JoinError('board-twice', `two boards are called ${placed.board.id}: give each its own id`);
    }
    standing.set(placed.board.id, { board: placed.board, place: settledFigures(placed.place) });
  }
  for (const { a, b } of requests) {
    const [one, two] = [standing.get(a), standing.get(b)];
    if (one && two && a !== b) continue;
    const text = a === b ? `${a} cannot be joined to itself` : `there is no board ${one ? b : a}`;
    throw new JoinError(
      'no-board',
      `joint ${a}/${b}: ${text}; boards are ${[...standing.keys()].join(', ')}: name two of them`,
    );
  }
  onceEach(requests.map(({ a, b, options }) => options?.id ?? `${a}/${b}`));
  const { boards: cut, joints, patchesLeft } = joinAll(standing, requests);
  onceEach(joints.map(({ id }) => id));
  const boards = new Map(
    [...standing].map(([id, { place }]): [string, PlacedBoard] => [id, { board: cut.get(id)!, place }]),
  );
  const { fastenings, hardware } = fastenAll(boards, held, season);
  const captives = panels.map((request) => captiveOf(request, boards, season));
  return settledFigures({
    derived: [],
    notes: [],
    ...spec,
    boards: [...boards.values()],
    joints,
    ...(captives.length === 0 ? {} : { captives }),
    ...(fastenings.length === 0 ? {} : { fastenings }),
    hardware: [...(spec.hardware ?? []), ...hardware],
    ...(patchesLeft.length === 0 ? {} : { patchesLeft }),
  });
}

function onceEach(ids: readonly string[]): void {
  const twice = ids.find((id, i) => ids.indexOf(id) < i);
  if (twice === undefined) return;
  throw new JoinError('joint-twice', `two joints are called ${twice}: give one of them an id of its own`);
}

/** Cuts every fastening into its boards, which are changed in place. */
function fastenAll(
  boards: Map<string, PlacedBoard>,
  requests: readonly FastenRequest[],
  season: Season | undefined,
) {
  const fastenings: Fastening[] = [];
  const hardware: Hardware[] = [];
  for (const request of requests) {
    const [held, to] = [boards.get(request.held), boards.get(request.to)];
    if (!held || !to || held === to)
      throw new JoinError(
        'fasten',
        `fastening ${request.held}/${request.to}: ${held === to ? 'a board cannot be fastened to itself' : `there is no board ${held ? request.to : request.held}`}; boards are ${[...boards.keys()].join(', ')}: name two of them`,
      );
    const made = fasten(held, to, request, season);
    boards.set(request.held, { ...held, board: made.held });
    boards.set(request.to, { ...to, board: made.to });
    fastenings.push(...made.fastenings);
    hardware.push(...made.hardware);
  }
  return { fastenings, hardware };
}
