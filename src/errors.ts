/**
 * The errors a person can cause. `code` is stable; the text says what, where, received, allowed and the remedy.
 * Anything that is not a TenonwrightError is a fault of the program.
 */
export class TenonwrightError extends Error {
  readonly code: string;

  constructor(code: string, message: string) {
    super(message);
    this.name = new.target.name;
    this.code = code;
  }
}

/** Text or a value given by the person that cannot be used. */
export class InputError extends TenonwrightError {}

/** An outline that is not a closed, simple loop of lines and arcs. */
export class ProfileError extends TenonwrightError {}

/** A board that cannot exist: a feature off its face, a blank without thickness. */
export class BoardError extends TenonwrightError {}

/** Two boards that cannot be joined as asked. */
export class JoinError extends TenonwrightError {}

/** A body the kernel refused, or one that is not the closed solid its data promise. */
export class SolidError extends TenonwrightError {}

/** A file or folder that cannot be written without losing something. */
export class OutputError extends TenonwrightError {}
