import { area } from './area.js';
import type { Profile } from './profile.js';

/** An outline travelled the other way round, from the same first vertex. */
export const reversed = (profile: Profile): Profile =>
  profile.map((_, i) => {
    const here = profile[(profile.length - i) % profile.length]!;
    return { x: here.x, y: here.y, bulge: opposite(profile[profile.length - 1 - i]!.bulge) };
  });

/** The outline with wood on its left: as given, or reversed. */
export const counterClockwise = (profile: Profile): Profile =>
  area(profile) < 0 ? reversed(profile) : profile;

/** The outline as a hole is travelled, with wood on its left outside: as given, or reversed. */
export const clockwise = (profile: Profile): Profile => (area(profile) > 0 ? reversed(profile) : profile);

const opposite = (bulge: number): number => (bulge === 0 ? 0 : -bulge);
