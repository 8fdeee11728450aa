/**
 * The bytes that `scripts/build-living.mjs` wrote as text, five letters for four of them: a sixteenth less than base64. Up to three
 * noughts may follow.
 */
export function asBytes(text: string): Uint8Array<ArrayBuffer> {
  const words = new DataView(new ArrayBuffer((text.length / 5) * 4));
  for (let word = 0; 4 * word < words.byteLength; word += 1) {
    let value = 0;
    for (let i = 5 * word; i < 5 * word + 5; i += 1) {
      const letter = text.charCodeAt(i);
      value = value * 85 + (letter === 33 ? 60 : letter) - 35;
    }
    words.setUint32(4 * word, value);
  }
  return new Uint8Array(words.buffer);
}
