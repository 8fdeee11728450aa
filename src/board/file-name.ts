/** Letters every file system takes; a name begins with a letter or digit, so never with a dot. */
const NAME = /^[\p{L}\p{N}][\p{L}\p{N} ._-]*(?<![ .])$/u;

/** Devices of Windows, whatever stands after a point (Microsoft, Naming Files, Paths, and Namespaces). */
const DEVICE = /^(?:con|prn|aux|nul|com[0-9¹²³]|lpt[0-9¹²³])(?:\.|$)/i;

/** Whether every file system takes this as the name of a file: a board's id becomes one. */
export const isFileName = (name: string): boolean => NAME.test(name) && !DEVICE.test(name);
