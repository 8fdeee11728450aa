import { spawnSync } from 'node:child_process';
import { tmpdir } from 'node:os';
import process from 'node:process';
import { test } from 'vitest';

/** A program of other makers that reads our files. */
export interface Program {
  /** The Debian package it comes in. */
  readonly package: string;
  /** How it is started; undefined when it is not on this machine. */
  readonly command: readonly [string, ...string[]] | undefined;
  /** What is not known without it. */
  readonly checks: string;
  /** Too heavy to be installed for every run: left out where it is not here, even when the others must be. */
  readonly optional?: true;
}

declare module 'vitest' {
  interface TaskMeta {
    /** Why a test was left out; `npm test` prints it. */
    leftOut?: string;
  }
}

/** The first of several ways to start a program that answers. */
const found = (
  ways: readonly (readonly [string, ...string[]])[],
  ask: readonly string[],
  answer = 0,
): readonly [string, ...string[]] | undefined =>
  ways.find(
    // some leave a file where they stand
    ([command, ...args]) =>
      spawnSync(command, [...args, ...ask], { stdio: 'ignore', cwd: tmpdir() }).status === answer,
  );

export const ADMESH: Program = {
  package: 'admesh',
  command: found([['admesh']], ['--version']),
  checks: 'whether a repairer of STL files finds nothing to repair',
};

// Debian's own python has the library when another one comes first on the path
export const EZDXF: Program = {
  package: 'python3-ezdxf',
  command: found([['python3'], ['/usr/bin/python3'], ['python']], ['-c', 'import ezdxf']),
  checks: 'whether a second reader of DXF files finds no error and the same outlines',
};

export const PDFTOTEXT: Program = {
  package: 'poppler-utils',
  command: found([['pdftotext']], ['-v']),
  checks: 'whether a reader of PDF files finds the words of the sheets',
};

export const PDFINFO: Program = {
  package: 'poppler-utils',
  command: found([['pdfinfo']], ['-v']),
  checks: 'whether a reader of PDF files can read the plan aloud in its order',
};

export const MUTOOL: Program = {
  package: 'mupdf-tools',
  command: found([['mutool']], ['-v']),
  checks: 'whether a reader of PDF files measures the sheets at their true size',
};

export const QPDF: Program = {
  package: 'qpdf',
  command: found([['qpdf']], ['--version']),
  checks: 'whether an inspector of PDF files finds no fault in them',
};

/** Mends the offsets of a file that qpdf unpacked and somebody edited. */
export const FIX_QDF: Program = {
  package: 'qpdf',
  command: found([['fix-qdf']], ['--version']),
  checks: QPDF.checks,
};

export const CHROMIUM: Program = {
  package: 'chromium',
  command: found([['chromium'], ['chromium-browser']], ['--version']),
  checks: 'whether the preview page works in a browser',
};

export const FIREFOX: Program = {
  package: 'firefox-esr',
  command: found([['firefox-esr'], ['firefox']], ['--version']),
  checks: 'whether the living plan works in a browser of another make',
};

export const ASSIMP: Program = {
  package: 'assimp-utils',
  command: found([['assimp']], ['version']),
  checks: 'whether another reader of 3MF and GLB files finds the same solids',
};

export const NUMPY: Program = {
  package: 'python3-numpy',
  command: found([['python3'], ['/usr/bin/python3'], ['python']], ['-c', 'import numpy']),
  checks: 'whether a second solver finds the same forces in frames',
};

export const CCX: Program = {
  package: 'calculix-ccx',
  // asked for its version, it ends with 201
  command: found([['ccx']], ['-v'], 201),
  checks: 'whether finite elements bend a frame and a tread alike',
};

// large with the libraries it brings
export const F3D: Program = {
  package: 'f3d',
  command: found([['xvfb-run', '-a', 'f3d']], ['--version']),
  checks: 'whether a viewer of STL files shows the solids',
  optional: true,
};

/** A program that a test asks for is not here. */
class NotHere extends Error {
  constructor(readonly program: Program) {
    super(`${program.package} is not on this machine`);
  }
}

/**
 * A test that needs a program of others, or several: left out with a reason when one of them is not here, failed when
 * `TENONWRIGHT_REQUIRE_OUTSIDE=1` says that it must be and it is none of the optional ones.
 *
 * @param program the one it cannot begin without
 */
export const testWith = (program: Program, name: string, body: () => void | Promise<void>): void =>
  test(name, async ({ task, skip }) => {
    try {
      if (!program.command) throw new NotHere(program);
      await body();
    } catch (error) {
      if (!(error instanceof NotHere)) throw error;
      const { package: missing, checks, optional } = error.program;
      if (process.env.TENONWRIGHT_REQUIRE_OUTSIDE === '1' && !optional) throw error;
      task.meta.leftOut = `${missing} is not on this machine, so it is not known ${checks}: apt-get install ${missing}`;
      skip(task.meta.leftOut);
    }
  });

/**
 * What a program prints, as text.
 *
 * @throws Error when it is not here or ends with a fault
 */
export const printed = (program: Program, ...args: readonly string[]): string =>
  printedBytes(program, ...args).toString();

/**
 * What a program prints, byte by byte.
 *
 * @throws Error when it is not here or ends with a fault
 */
export function printedBytes(program: Program, ...args: readonly string[]): Buffer {
  if (!program.command) throw new NotHere(program);
  const [command, ...first] = program.command;
  const { status, stdout, stderr, error } = spawnSync(command, [...first, ...args], {
    maxBuffer: 2 ** 28,
    cwd: tmpdir(),
  });
  if (status !== 0)
    throw new Error(`${command} ${args.join(' ')} ended with ${status}: ${error?.message ?? stderr}`);
  return stdout;
}
