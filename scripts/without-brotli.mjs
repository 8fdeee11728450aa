/** Fonts are read as they are: what unpacks the closer packing of the web stays out of what esbuild packs. */
export const withoutBrotli = {
  name: 'without brotli',
  setup({ onLoad }) {
    onLoad({ filter: /[\\/]brotli[\\/]decompress\.js$/ }, () => ({
      contents: 'module.exports = undefined;',
    }));
  },
};
