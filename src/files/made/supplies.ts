/** A font, regular and bold, as WOFF files. */
export interface PlanFonts {
  readonly plain: Uint8Array;
  readonly bold: Uint8Array;
  /** Unpacks zlib data where there is something faster than this program's own way. */
  readonly unzip?: (packed: Uint8Array) => Uint8Array;
}

/** What draws a picture: the renderer's WebAssembly and a font as a WOFF2 file. */
export interface PictureMaker {
  readonly wasm: Uint8Array;
  readonly font: Uint8Array;
}

/** What makes a living plan of a preview, packed. */
export interface LivingScripts {
  /** The page's script. */
  readonly page: string;
  /** The worker's script, the kernel and the fonts of the plan: a ZIP as text. */
  readonly engine: string;
}

/** What writers need beside the program's own code; each is fetched when a writer first asks for it. */
export interface Supplies {
  readonly planFonts: () => Promise<PlanFonts>;
  readonly pictureMaker: () => Promise<PictureMaker>;
  /** The preview page's script, packed. */
  readonly viewerScript: () => Promise<string>;
  readonly livingScripts: () => Promise<LivingScripts>;
}
