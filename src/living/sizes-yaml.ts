import type { LivingData, LivingState } from '../files/index.js';
import { optionName } from '../model/index.js';

/** What the command line chooses by itself. */
const USUAL: ReadonlySet<string> = new Set(['binary', 'arcs', 'first-angle']);

/** The sizes as a file of parameters for the command line, headed by the command that takes it. */
export function sizesYaml(
  { design, told, given, units, shop }: LivingState,
  written: LivingData['written'],
): string {
  const piece = told?.file ?? design;
  const options = [
    `--from ${yamlName(design)}`,
    ...(units === 'mm' ? [] : ['--units in']),
    ...(shop ? [`--shop ${shop.name}`] : []),
    ...Object.entries(written).flatMap(([name, choice]) =>
      USUAL.has(choice) ? [] : [`--${optionName(name)} ${choice}`],
    ),
  ];
  return [
    `# tenonwright make ${piece} ${options.join(' ')}`,
    // a text in quotes is a word to YAML, whatever stands in it
    ...Object.entries(given).map(([name, text]) => `${name}: ${JSON.stringify(text)}`),
    '',
  ].join('\n');
}

export const yamlName = (design: string): string => `${design}-sizes.yaml`;
