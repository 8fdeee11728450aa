import type { PreviewData } from '../told/index.js';

/** What the page holds. */
export const readData = (): PreviewData => JSON.parse(onPage('design').textContent ?? '');

/** An element by its id: the page is written by this program, so it is there. */
export const onPage = <T extends HTMLElement>(id: string): T => document.getElementById(id) as T;

/** Every row of the lists that goes to something in the picture. */
export const rows = (): readonly HTMLButtonElement[] => [
  ...document.querySelectorAll<HTMLButtonElement>('button[data-go]'),
];

/** Pieces a row stands for. */
export const piecesOfRow = (row: HTMLButtonElement): readonly string[] =>
  JSON.parse(row.dataset.pieces ?? '[]');

/** Rows of tenons that go in, and of boards brought together. */
export const isStep = ({ dataset }: HTMLElement): boolean => dataset.go === 'step' || dataset.go === 'tenons';

/** The number of a row's step among all: tenons go in first. */
export const stepOfRow = ({ dataset }: HTMLElement, { first }: PreviewData): number =>
  Number(dataset.index) + (dataset.go === 'step' ? first.length : 0);

/** Shown over the picture, and read out. */
export function say(text: string): void {
  onPage('told').textContent = text;
}
