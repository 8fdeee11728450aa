/** A font, regular and bold, as WOFF files. */
export interface PlanFonts {
  readonly plain: Uint8Array;
  readonly bold: Uint8Array;
  /** Unpacks zlib data where there is something faster than this program's own way. */
  readonly unzip?: (packed: Uint8Array) => Uint8Array;
}

/** What makes a living plan of a preview, packed. */
export interface LivingScripts {
  /** The page's script. */
  readonly page: string;
  /** The worker's script, the kernel and the fonts of the plan: a ZIP as text. */
  readonly engine: string;
  /** What draws PNG pictures, likewise; left out of a page that makes none. */
  readonly renderer?: string;
}

/** What writers need beside the program's own code; each is fetched when a writer first asks for it. */
export interface Supplies {
  readonly planFonts: () => Promise<PlanFonts>;
  /** The WebAssembly that draws pictures without words. */
  readonly renderer: () => Promise<Uint8Array>;
  /** The preview page's script, packed. */
  readonly viewerScript: () => Promise<string>;
  /** @param pictures whether the page makes PNG pictures as well */
  readonly livingScripts: (pictures: boolean) => Promise<LivingScripts>;
}
