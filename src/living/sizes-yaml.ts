import type { LivingState } from '../files/index.js';

/** The sizes as a file of parameters for the command line, headed by the command that takes it. */
export function sizesYaml({ design, told, given, units, shop }: LivingState): string {
  const piece = told?.file ?? design;
  const options = [
    `--from ${yamlName(design)}`,
    ...(units === 'mm' ? [] : ['--units in']),
    ...(shop ? [`--shop ${shop.name}`] : []),
  ];
  return [
    `# tenonwright make ${piece} ${options.join(' ')}`,
    // a text in quotes is a word to YAML, whatever stands in it
    ...Object.entries(given).map(([name, text]) => `${name}: ${JSON.stringify(text)}`),
    '',
  ].join('\n');
}

export const yamlName = (design: string): string => `${design}-sizes.yaml`;
