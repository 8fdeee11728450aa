/** The box every example of the page stands in. */
const AROUND = 'design: example\nwood: white ash\npiece: [400, 300, 500]\n';

/** Examples of docs/writing-a-piece.md: what is told, and the picture below it with its words. */
export const examplesOf = (page) =>
  [...page.matchAll(/```yaml\n(.*?)```\n\n!\[(.*?)\]\(pictures\/(.*?)\)/gs)].map(([, told, said, file]) => ({
    text: AROUND + told,
    said,
    file,
  }));

/** Pictures of the examples, drawn by the program. @returns SVG by the name of its file */
export async function picturesOf(page, { pieceFrom, startKernel, solidsOf, isometricView, viewSvg }) {
  const kernel = await startKernel();
  const pictures = new Map();
  for (const { text, said, file } of examplesOf(page)) {
    const design = pieceFrom(text, file).build({});
    const svg = viewSvg(isometricView(solidsOf(kernel, design)), said);
    pictures.set(file, `${svg.replace('<svg ', '<svg height="240" style="background:#fff" ')}\n`);
  }
  kernel.dispose();
  return pictures;
}
