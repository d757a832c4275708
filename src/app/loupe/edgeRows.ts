import { type CoverDesign, EDGE_NAMES, type Edge, gapAt, type Printer, RANGE_POINTS } from '../../core/index.ts';

/** The gap of an edge over the leather's range, mm; negative where it overruns. */
export interface EdgeRow {
  readonly edge: Edge;
  readonly name: string;
  readonly least: number;
  readonly most: number;
}

/** Both fore-edges as one where they have the same gap. */
export function edgeRows({ fits }: CoverDesign): readonly EdgeRow[] {
  const row = (edge: Edge, name: string = EDGE_NAMES[edge]): EdgeRow => {
    const gaps = RANGE_POINTS.map((point) => gapAt(fits[point], edge));
    return { edge, name, least: Math.min(...gaps), most: Math.max(...gaps) };
  };
  const isAlike = RANGE_POINTS.every((point) => fits[point].foreEdge.front === fits[point].foreEdge.back);
  const foreEdges = isAlike ? [row('frontForeEdge', 'fore-edges')] : [row('frontForeEdge'), row('backForeEdge')];
  return [...foreEdges, row('head'), row('tail')];
}

/** `1.1 to 2.4 mm`, `overrun up to 1.2 mm`, or with signs where one end of the leather has room and the other has none. */
export function roomWords(least: number, most: number, lengths: Printer): string {
  if (least >= 0) return lengths.range([least, most]);
  if (most >= 0) return `${lengths.signedGap(least)} to ${lengths.signedGap(most)}`;
  const [worst, best] = [lengths.gap(least), lengths.gap(most)];
  return worst === best ? `overrun ${worst}` : `overrun up to ${worst}`;
}
