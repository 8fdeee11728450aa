import type { Box, SheetEntity } from '../sheet/index.js';

/** Pages being filled from the top; below `y` the last one is empty. mm on the sheet. */
export class Filling {
  readonly pages: SheetEntity[][] = [[]];
  /** How much of each page is taken, from 0 to 1. */
  readonly shares: number[] = [];
  readonly left: number;
  readonly room: number;
  y: number;

  constructor(readonly area: Box) {
    this.left = area.minX;
    this.room = area.maxX - area.minX;
    this.y = area.maxY;
  }

  get isFresh(): boolean {
    return this.pages.at(-1)!.length === 0;
  }

  /** What is left of the page, mm. */
  get below(): number {
    return this.y - this.area.minY;
  }

  /** Of the page, from 0 to 1. */
  get share(): number {
    return (this.area.maxY - this.y) / (this.area.maxY - this.area.minY);
  }

  holds(height: number): boolean {
    return this.y - height >= this.area.minY;
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

  put(...entities: readonly SheetEntity[]): void {
    this.pages.at(-1)!.push(...entities);
  }
}
