/** How a shape written over the picture looks is told by the page; in a file of its own it must be told anew. */
const LOOKS = [
  'fill',
  'stroke',
  'stroke-width',
  'paint-order',
  'stroke-linejoin',
  'font-size',
  'font-family',
];

/** The picture with all that is written over it, as a PNG at the canvas's own dots. */
export async function pictureOf(canvas: HTMLCanvasElement, over: SVGSVGElement): Promise<Blob> {
  const { width, height, clientWidth, clientHeight } = canvas;
  const sheet = document.createElement('canvas');
  Object.assign(sheet, { width, height });
  const pen = sheet.getContext('2d')!;
  pen.drawImage(canvas, 0, 0);
  const copy = over.cloneNode(true) as SVGSVGElement;
  const [own, copied] = [over, copy].map((of) => [...of.querySelectorAll('*')]) as [Element[], SVGElement[]];
  copied.forEach((one, i) => {
    const style = getComputedStyle(own[i]!);
    for (const look of LOOKS) one.style.setProperty(look, style.getPropertyValue(look));
  });
  const size = {
    xmlns: 'http://www.w3.org/2000/svg',
    width,
    height,
    viewBox: `0 0 ${clientWidth} ${clientHeight}`,
  };
  for (const [key, value] of Object.entries(size)) copy.setAttribute(key, String(value));
  const image = new Image();
  image.src = `data:image/svg+xml,${encodeURIComponent(new XMLSerializer().serializeToString(copy))}`;
  await image.decode();
  pen.drawImage(image, 0, 0, width, height);
  return new Promise((done, fail) =>
    sheet.toBlob((blob) => (blob ? done(blob) : fail(new Error('no picture was made'))), 'image/png'),
  );
}

/** `step-stool-6c967da4.png`. */
export const pictureName = ({ title, revision }: { title: string; revision: string }): string =>
  `${[...title.toLowerCase().split(/[^\p{L}\p{N}]+/u), revision].filter((word) => word !== '').join('-')}.png`;
