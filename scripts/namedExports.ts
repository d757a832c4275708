import type { Plugin } from 'vite';

/**
 * js-aruco2 hands out what it has by `this`, which Node takes for the exports of a CommonJS module and bundlers for nothing: it is
 * bundled by the name `exports`.
 */
export const namedExports = (): Plugin => ({
  name: 'named-exports',
  transform: {
    filter: { id: /\/js-aruco2\/src\/(aruco|cv)\.js(\?|$)/ },
    handler: (code) => ({ code: code.replace(/\bthis\.(AR|CV)\b/g, 'exports.$1'), map: null }),
  },
});
