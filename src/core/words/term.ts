/** The small drawings of this book's own cover, each with the parts that a term can light in it. */
export const TERM_DRAWINGS = {
  /** Section at a fore-edge. */
  edge: ['squash', 'gap', 'stop', 'margin', 'pocket', 'hold', 'outside', 'lining'],
  /** Section across the spine, closed. */
  spine: ['wrap', 'spine', 'joints', 'rise', 'boards', 'pages', 'foreEdges'],
  /** One bend, far larger than it is. */
  bend: ['thickness', 'radius', 'neutral', 'grain', 'flesh'],
  /** Section across the spine, lying open. */
  open: ['joints', 'boards'],
  /** Section across the spine, a little open. */
  ajar: ['wrap'],
  /** Flat pattern of the outside. */
  pattern: ['seam', 'pitch', 'head', 'tail', 'ends', 'backbone'],
  /** The leather at the ends and in the middle of its weight range. */
  range: ['thin', 'middle', 'thick', 'all'],
  /** How often each gap comes out at an edge. */
  chance: ['spread', 'fits'],
} as const;

type Drawings = typeof TERM_DRAWINGS;

/** A small drawing with the part that is lit, as `edge.gap`. */
export type TermPart = { [D in keyof Drawings]: `${D}.${Drawings[D][number]}` }[keyof Drawings];

/** One term of the trade or of this tool. */
export interface Term {
  /** In fewer than 20 words. */
  readonly meaning: string;
  readonly plural?: string;
  /** What it is never called; a test looks for these in every text that a maker reads. */
  readonly not: readonly string[];
  /** Where it is shown; left out for what no drawing shows. */
  readonly shown?: TermPart;
}
