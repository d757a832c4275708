/** The edges of a cover where its fit is read. */
export const EDGE_NAMES = {
  frontForeEdge: 'front fore-edge',
  backForeEdge: 'back fore-edge',
  head: 'head',
  tail: 'tail',
} as const;
