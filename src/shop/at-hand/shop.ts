import type { Fraction, Rule, Units } from '../../length/index.js';
import type { Cut } from '../../movement/index.js';
import type { GlueTold } from '../../strength/index.js';

/**
 * What is at hand in the shop, asked once. Lengths mm. Whatever is left out makes the figures that need it `not verified`,
 * never `passed`.
 */
export interface Shop {
  /** Named in every paper: the file it came from without its folders, or the built-in one. */
  readonly name: string;
  /** What its papers speak, and how fine they tell lengths of wood. */
  readonly units: Rule;
  /** The finest fraction of an inch it works wood to, where it says so. */
  readonly fraction?: Fraction;
  /** What its stock and cutters are round in: sizes of a design that are left out are round there too. */
  readonly measures: Units;
  readonly router: RouterAtHand;
  readonly cutters: readonly CutterAtHand[];
  readonly bushes: readonly BushAtHand[];
  /** Parameters of the `jig` model, as given to it; what is left out takes its defaults. */
  readonly jig: Readonly<Record<string, unknown>>;
  readonly sawKerf?: number;
  readonly sheets: readonly SheetAtHand[];
  /** Widths and lengths of the lumber at hand, for the board layout. */
  readonly lumber: readonly LumberAtHand[];
  /** Added to each finished size to get the rough one. */
  readonly roughAllowance?: { readonly length: number; readonly width: number; readonly thickness: number };
  /** Shortest piece that is safe on the machine. */
  readonly shortest: { readonly planer?: number; readonly saw?: number };
  readonly clamps: readonly ClampAtHand[];
  readonly paper: 'A4' | 'Letter';
  readonly glue?: GlueAtHand;
  /** Where the pieces will stand: a climate of the table, or the air at its driest and its dampest. */
  readonly place?: PlaceTold;
  readonly wood?: WoodAtHand;
  /** Of a joint, measured, N·m/rad. */
  readonly jointStiffness?: number;
}

/** °C and relative humidity in %; all four or none. */
export interface PlaceTold {
  readonly climate?: string;
  readonly dryCelsius?: number;
  readonly dryHumidity?: number;
  readonly dampCelsius?: number;
  readonly dampHumidity?: number;
}

export interface RouterAtHand {
  readonly base: {
    readonly shape: 'round' | 'rectangle' | 'round with flats';
    /** The diameter of a round one, whatever its flats. */
    readonly along: number;
    readonly across: number;
    /** From the cutter's axis to the flats of a round one, as it stands on the work: towards the person, away, to the left and right. */
    readonly flats?: { readonly near?: number; readonly far?: number; readonly sides?: number };
  };
  /** Cutter axis off the middle of the base, measured. */
  readonly eccentricity?: number;
  readonly plungeTravel?: number;
  /** Heights of the turret's steps above its lowest, ascending, starting with 0. */
  readonly turretSteps?: readonly number[];
  /** Shank diameters its collets take. */
  readonly collets?: readonly number[];
  /** Thickness of the base plate itself. */
  readonly baseThickness?: number;
  /** Farthest distance from cutter to edge guide. */
  readonly guideReach?: number;
}

export interface CutterAtHand {
  /** What is written on it. */
  readonly nominal: number;
  /** Measured with a caliper. */
  readonly diameter?: number;
  readonly cuttingLength?: number;
  readonly overallLength?: number;
  readonly shank?: number;
  /** Width of a slot it cut as a test, in face grain and in end grain, measured. */
  readonly slotInFace?: number;
  readonly slotInEnd?: number;
}

export interface BushAtHand {
  readonly outside: number;
  readonly bore: number;
  readonly collarLength: number;
}

export interface SheetAtHand {
  readonly name: string;
  readonly length: number;
  readonly width: number;
  /** Measured. */
  readonly thickness: number;
}

export interface LumberAtHand {
  readonly thickness: number;
  readonly width: number;
  readonly length: number;
  readonly count: number;
}

export interface ClampAtHand {
  readonly opening: number;
  readonly throat: number;
  readonly count: number;
}

export interface WoodAtHand {
  readonly sawn?: Cut;
  /** Moisture content at glue-up, %. */
  readonly gluedAt?: number;
  /** The most it comes to in use, %. */
  readonly moisture?: number;
  /** The grain runs out by 1 in so many, seen on a face and on an edge. */
  readonly grainOneIn?: number;
  readonly grainOneInOnEdge?: number;
  /** What tenons are cut from. */
  readonly tenons?: string;
}

export interface GlueAtHand extends GlueTold {
  readonly openMinutes: number;
  readonly clampMinutes: number;
  readonly leastCelsius: number;
}

/** Passed and failed are measured; not verified names what the shop file does not say. */
export type Verdict = 'passed' | 'failed' | 'not verified';
