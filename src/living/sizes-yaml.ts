import type { LivingData, LivingState } from '../files/index.js';
import { optionName } from '../model/index.js';

/** What the command line chooses by itself. */
const USUAL: ReadonlySet<string> = new Set(['binary', 'arcs', 'first-angle']);

/** The sizes as a file of parameters for the command line, headed by the command that takes it. */
export const sizesYaml = (state: LivingState, written: LivingData['written']): string =>
  [
    `# ${makeLine(state, written)}`,
    // a text in quotes is a word to YAML, whatever stands in it
    ...Object.entries(state.given).map(([name, text]) => `${name}: ${JSON.stringify(text)}`),
    '',
  ].join('\n');

/** What a page that draws no pictures says of them. */
export const picturesElsewhere = (state: LivingState, written: LivingData['written']): string =>
  `Left out: the pictures (pictures/*.svg and *.png), because what draws them would make this page half as large again. To have them, run "${makeLine(state, written)} --only pictures" (“Sizes for the command line” saves that file), or take a page made by "tenonwright open ${pieceOf(state)} --living-pictures".`;

const pieceOf = ({ design, told }: LivingState): string => told?.file ?? design;

function makeLine(state: LivingState, written: LivingData['written']): string {
  const { design, units, shop } = state;
  const options = [
    `--from ${yamlName(design)}`,
    ...(units === 'mm' ? [] : ['--units in']),
    ...(shop ? [`--shop ${shop.name}`] : []),
    ...Object.entries(written).flatMap(([name, choice]) =>
      USUAL.has(choice) ? [] : [`--${optionName(name)} ${choice}`],
    ),
  ];
  return `tenonwright make ${pieceOf(state)} ${options.join(' ')}`;
}

export const yamlName = (design: string): string => `${design}-sizes.yaml`;
