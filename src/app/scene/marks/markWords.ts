import type { FitMark } from '../../../core/index.ts';

const PLACES: Record<FitMark['edge'], string> = {
  frontForeEdge: 'front fore-edge',
  backForeEdge: 'back fore-edge',
  head: 'head',
  tail: 'tail',
  spine: 'spine',
  gape: 'fore-edges',
};

/** Word for what is measured: spare room, want of room, spare length on the spine, or how far the book stays open. */
function measured({ edge, value }: FitMark): string {
  if (edge === 'gape') return 'stand open';
  if (value < 0) return 'overrun';
  return edge === 'spine' ? 'slack' : 'gap';
}

/** Label of a mark, such as `head: gap 1.2 mm`; the sign is in the word. */
export const markWords = (mark: FitMark, formatLength: (mm: number) => string): string =>
  `${PLACES[mark.edge]}: ${measured(mark)} ${formatLength(mark.value)}${mark.isLoose && mark.value > 0 ? ', too loose' : ''}`;
