import { type CoverDesign, type PatternZone, patternZone, type RangePoint, type SegmentId } from '../../core/index.ts';

/** A place on the cover that can be lit. */
export type Spot = 'foreEdge' | 'frontForeEdge' | 'backForeEdge' | 'head' | 'tail' | 'spine' | 'pockets';

/** Stretches of the outside that make up each place; a cover has some of them. */
const STRETCHES: Readonly<Record<Exclude<Spot, 'pockets'>, readonly (readonly SegmentId[])[]>> = {
  foreEdge: [
    ['frontTurn', 'frontMargin', 'frontSeat', 'frontGap'],
    ['backTurn', 'backMargin', 'backSeat', 'backGap'],
  ],
  frontForeEdge: [['frontTurn', 'frontMargin', 'frontSeat', 'frontGap']],
  backForeEdge: [['backTurn', 'backMargin', 'backSeat', 'backGap']],
  head: [['headMargin', 'headSeat', 'headGap']],
  tail: [['tailMargin', 'tailSeat', 'tailGap']],
  spine: [['frontFold', 'spine', 'spineGap', 'bridge', 'backFold']],
};

/** The bands of the outside that a place takes up. */
export function spotZones(design: CoverDesign, point: RangePoint, spot: Spot): PatternZone[] {
  if (spot === 'pockets') return pocketZones(design, point);
  return STRETCHES[spot].flatMap((names) => {
    const zones = names.map((name) => patternZone(design, point, name)).filter((zone) => zone !== null);
    const [first] = zones;
    if (!first) return [];
    const [from, to] = [Math.min(...zones.map((zone) => zone.from)), Math.max(...zones.map((zone) => zone.to))];
    return [{ axis: first.axis, from, to }];
  });
}

/** What lies over the pockets, which a closed cover hides: from each made edge to the mouth. */
function pocketZones(design: CoverDesign, point: RangePoint): PatternZone[] {
  const zone = (name: SegmentId): PatternZone | null => patternZone(design, point, name);
  const [front, back] = [zone('frontMargin') ?? zone('frontTurn'), zone('backMargin') ?? zone('backTurn')];
  if (front === null || back === null) return [];
  const depth = design.made.pocketDepth;
  return [
    { ...front, to: front.to + depth },
    { ...back, from: back.from - depth },
  ];
}
