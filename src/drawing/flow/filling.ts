import type { Box, SheetEntity } from '../sheet/index.js';

/** Pages being filled from the top; below `y` the last one is empty. mm on the sheet. */
export class Filling {
  readonly pages: SheetEntity[][] = [[]];
  /** How much of each page is taken, from 0 to 1. */
  readonly shares: number[] = [];
  /** Ids of the boards a page is about. */
  readonly about = new Map<number, Set<string>>();
  readonly left: number;
  readonly room: number;
  y: number;

  /** @param kept what is kept free at the foot of a page, mm */
  constructor(
    readonly area: Box,
    readonly kept: ReadonlyMap<number, number> = new Map(),
  ) {
    this.left = area.minX;
    this.room = area.maxX - area.minX;
    this.y = area.maxY;
  }

  get isFresh(): boolean {
    return this.pages.at(-1)!.length === 0;
  }

  /** What is left of the page, mm. */
  get below(): number {
    return this.y - this.floor;
  }

  /** Of the page after this one, mm. */
  get next(): number {
    return this.area.maxY - this.area.minY - (this.kept.get(this.pages.length) ?? 0);
  }

  private get floor(): number {
    return this.area.minY + (this.kept.get(this.pages.length - 1) ?? 0);
  }

  /** Of the page, from 0 to 1. */
  get share(): number {
    return (this.area.maxY - this.y) / (this.area.maxY - this.area.minY);
  }

  holds(height: number): boolean {
    return this.y - height >= this.floor;
  }

  /** A new page, unless nothing stands on this one. */
  turn(): void {
    if (this.isFresh) return;
    this.shares.push(this.share);
    this.pages.push([]);
    this.y = this.area.maxY;
  }

  /** Goes down by a height that stays whole: on the next page when this one does not hold it. */
  take(height: number): void {
    if (!this.holds(height - 1e-6)) this.turn();
    this.y -= height;
  }

  tell(page: number, boards: readonly string[]): void {
    this.about.set(page, new Set([...(this.about.get(page) ?? []), ...boards]));
  }

  put(...entities: readonly SheetEntity[]): void {
    this.pages.at(-1)!.push(...entities);
  }
}
