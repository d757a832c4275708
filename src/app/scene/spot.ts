import { type CoverDesign, type PatternZone, patternZone, type RangePoint, type SegmentId } from '../../core/index.ts';

/** A place on the cover that can be lit. */
export type Spot = 'foreEdge' | 'frontForeEdge' | 'backForeEdge' | 'head' | 'tail' | 'spine' | 'pockets';

/** Stretches of the outside that make up each place; a cover has some of them. */
const STRETCHES: Readonly<Record<Spot, readonly (readonly SegmentId[])[]>> = {
  foreEdge: [
    ['frontTurn', 'frontMargin', 'frontSeat', 'frontGap'],
    ['backTurn', 'backMargin', 'backSeat', 'backGap'],
  ],
  frontForeEdge: [['frontTurn', 'frontMargin', 'frontSeat', 'frontGap']],
  backForeEdge: [['backTurn', 'backMargin', 'backSeat', 'backGap']],
  head: [['headMargin', 'headSeat', 'headGap']],
  tail: [['tailMargin', 'tailSeat', 'tailGap']],
  spine: [['frontFold', 'spine', 'spineGap', 'bridge', 'backFold']],
  // The pockets themselves are lit, which the open cover shows.
  pockets: [],
};

/** The bands of the outside that a place takes up. */
export const spotZones = (design: CoverDesign, point: RangePoint, spot: Spot): PatternZone[] =>
  STRETCHES[spot].flatMap((names) => {
    const zones = names.map((name) => patternZone(design, point, name)).filter((zone) => zone !== null);
    const [first] = zones;
    if (!first) return [];
    const [from, to] = [Math.min(...zones.map((zone) => zone.from)), Math.max(...zones.map((zone) => zone.to))];
    return [{ axis: first.axis, from, to }];
  });
