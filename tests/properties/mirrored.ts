import type { Design, Hardware, Mechanism } from '../../src/assembly/index.js';
import type { Board } from '../../src/board/index.js';
import { directionOut, type Frame, frameOut, pointOut, scale, type Vec3 } from '../../src/frame/index.js';
import type { Profile } from '../../src/profile/index.js';

/** The design as seen in a mirror that stands at x = 0: every board made the other way round across its width. */
export function mirrored(design: Design): Design {
  const across = (v: Vec3): Vec3 => [-v[0], v[1], v[2]];
  return {
    ...design,
    boards: design.boards.map(({ board, place }) => ({
      board: mirroredBoard(board),
      // the blank's other long edge becomes the reference edge
      place: handed({ ...place, origin: pointOut(place, [0, board.blank.width, 0]) }, across, across),
    })),
    joints: design.joints.map((joint) => ({
      ...joint,
      seat: handed(joint.seat, across, across),
      tenons: joint.tenons.map((tenon) => ({ ...tenon, place: handed(tenon.place, across, across) })),
    })),
    hardware: design.hardware.map((piece) => mirroredHardware(piece, across)),
    ...(design.mechanism ? { mechanism: movedBy(design.mechanism, across) } : {}),
    ...(design.explode ? { explode: mapped(design.explode, across) } : {}),
  };
}

/** The design moved as one piece: its assembly frame stands somewhere else. */
export function moved(design: Design, to: Frame): Design {
  const turned = (v: Vec3): Vec3 => directionOut(to, v);
  return {
    ...design,
    boards: design.boards.map(({ board, place }) => ({ board, place: frameOut(to, place) })),
    joints: design.joints.map((joint) => ({
      ...joint,
      seat: frameOut(to, joint.seat),
      tenons: joint.tenons.map((tenon) => ({ ...tenon, place: frameOut(to, tenon.place) })),
    })),
    hardware: design.hardware.map((piece) => ({ ...piece, place: frameOut(to, piece.place) })),
    ...(design.mechanism ? { mechanism: movedBy(design.mechanism, turned) } : {}),
    ...(design.explode ? { explode: mapped(design.explode, turned) } : {}),
  };
}

/** A mirrored frame is left-handed; with its y turned about it is right-handed again. */
const handed = (f: Frame, point: (p: Vec3) => Vec3, direction: (d: Vec3) => Vec3): Frame => ({
  origin: point(f.origin),
  x: direction(f.x),
  y: scale(direction(f.y), -1),
  z: direction(f.z),
});

function mirroredBoard(board: Board): Board {
  const { width } = board.blank;
  const point = ([x, y, z]: Vec3): Vec3 => [x, width - y, z];
  const direction = ([x, y, z]: Vec3): Vec3 => [x, -y, z];
  const feature = <T extends { readonly at: Frame }>(of: T): T => ({
    ...of,
    at: handed(of.at, point, direction),
  });
  return {
    ...board,
    outline: mirroredOutline(board.outline, width),
    bevels: board.bevels.map((bevel) => ({
      ...bevel,
      point: point(bevel.point),
      normal: direction(bevel.normal),
      ...(bevel.within ? { within: mirroredOutline(bevel.within, width) } : {}),
    })),
    openings: board.openings.map((opening) => ({
      ...opening,
      outline: mirroredOutline(opening.outline, width),
    })),
    mortises: board.mortises.map((mortise) => ({
      ...feature(mortise),
      ...(mortise.faceNormal ? { faceNormal: direction(mortise.faceNormal) } : {}),
    })),
    holes: board.holes.map(feature),
    slots: board.slots.map(feature),
  };
}

const mirroredHardware = (piece: Hardware, across: (v: Vec3) => Vec3): Hardware => ({
  ...piece,
  place: handed(piece.place, across, across),
  stages: piece.stages.map((stage) => ({
    ...stage,
    outline: mirroredOutline(stage.outline, 0),
    ...(stage.bores ? { bores: stage.bores.map((bore) => mirroredOutline(bore, 0)) } : {}),
  })),
});

/** Run backwards, so that it goes round the same way; each side keeps its bulge. */
const mirroredOutline = (outline: Profile, width: number): Profile => {
  const back = outline.toReversed();
  return back.map(({ x, y }, i) => ({ x, y: width - y, bulge: back[(i + 1) % back.length]!.bulge }));
};

const movedBy = (mechanism: Mechanism, by: (v: Vec3) => Vec3): Mechanism => ({
  ...mechanism,
  poses: mechanism.poses.map(({ name, shift }) => ({ name, shift: mapped(shift, by) })),
});

const mapped = (shifts: Readonly<Record<string, Vec3>>, by: (v: Vec3) => Vec3): Record<string, Vec3> =>
  Object.fromEntries(Object.entries(shifts).map(([id, shift]) => [id, by(shift)]));
