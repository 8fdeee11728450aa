/**
 * The name of a parameter as an option and in a YAML file.
 *
 * @param name camelCase, or already kebab-case
 * @example optionName('seatLength') // 'seat-length'
 */
export const optionName = (name: string): string =>
  name.replace(/[A-Z]/g, (letter, at: number) => (at > 0 ? '-' : '') + letter.toLowerCase());
