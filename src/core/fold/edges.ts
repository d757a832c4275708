import type { Fit } from './coverFit.ts';

/** The edges of the boards, in the order in which one goes round the front board and on to the back one. */
export const EDGES = ['frontForeEdge', 'head', 'backForeEdge', 'tail'] as const;
export type Edge = (typeof EDGES)[number];

export const isForeEdge = (edge: Edge): boolean => edge === 'frontForeEdge' || edge === 'backForeEdge';

/** Gap at an edge, mm; negative where it overruns. */
export const gapAt = ({ foreEdge, head, tail }: Fit, edge: Edge): number =>
  ({ frontForeEdge: foreEdge.front, backForeEdge: foreEdge.back, head, tail })[edge];
