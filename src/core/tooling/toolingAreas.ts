import type { CoverDesign } from '../fold/coverDesign.ts';
import { heightSegments, type StripSegment, stripSegments } from '../fold/segments.ts';
import { changeOf } from '../leather/changeOf.ts';
import { RANGE_POINTS, type RangePoint } from '../leather/leatherModel.ts';
import type { Box2 } from '../math/box2.ts';
import { mouthSagitta } from '../pattern/mouth.ts';
import { strapOf } from '../pattern/strap.ts';
import { seenMiddle } from './seenMiddle.ts';
import { type Obstacle, SIDES, type Side, type ToolingArea } from './toolingArea.ts';
import { FASTENING, outsideObstacles, pocketObstacles } from './toolingObstacles.ts';

/**
 * The faces of a cover that can be tooled, each with its flat part, its margins and its centre lines.
 *
 * A board's face is flat between the board's edges and the spine fold, a spine between its two folds (along the curve of a
 * rounded back), a pocket between board edge and mouth, a strap between the fore-edge and its fastening. Each is the part
 * common to thin end, middle and thick end of the leather, less what a hole, a corner, the strap or its fastening takes. The
 * centre line of front and back stands in the middle of what is seen of the closed book from over that board, at the middle
 * thickness; that from head to tail in the middle of the cover's height.
 * @returns the faces that the cover has; one that lies flat nowhere is left out
 */
export function toolingAreas(design: CoverDesign): readonly ToolingArea[] {
  return [...outsideAreas(design), ...pocketAreas(design), ...strapAreas(design)];
}

type Wanted = Omit<ToolingArea, 'clear' | 'whole' | 'obstacles' | 'growth' | 'isTurned'> &
  Partial<Pick<ToolingArea, 'growth' | 'isTurned'>>;

/** An area, made smaller by what lies on its face: the side that loses the smallest share gives way. */
function area(design: CoverDesign, wanted: Wanted, obstacles: readonly Obstacle[]): ToolingArea[] {
  const { width: across, height: along } = changeOf(design.job);
  let { x, y } = wanted.flat;
  for (const box of obstacles) {
    const lost: Record<Side, number> = {
      left: (box.x[1] - x[0]) / (x[1] - x[0]),
      right: (x[1] - box.x[0]) / (x[1] - x[0]),
      bottom: (box.y[1] - y[0]) / (y[1] - y[0]),
      top: (y[1] - box.y[0]) / (y[1] - y[0]),
    };
    if (SIDES.some((side) => lost[side] <= 0)) continue;
    const side = SIDES.reduce((best, next) => (lost[next] < lost[best] ? next : best));
    if (side === 'left') x = [box.x[1], x[1]];
    if (side === 'right') x = [x[0], box.x[0]];
    if (side === 'bottom') y = [box.y[1], y[1]];
    if (side === 'top') y = [y[0], box.y[0]];
    if (x[1] <= x[0] || y[1] <= y[0]) return [];
  }
  const { margins } = wanted;
  const clear: Box2 = {
    x: [x[0] + margins.left, x[1] - margins.right],
    y: [y[0] + margins.bottom, y[1] - margins.top],
  };
  const hasRoom = clear.x[1] > clear.x[0] && clear.y[1] > clear.y[0];
  return [
    {
      growth: [1 + across, 1 + along],
      isTurned: false,
      ...wanted,
      flat: { x, y },
      whole: wanted.flat,
      obstacles,
      clear: hasRoom ? clear : null,
    },
  ];
}

/** Back, spine and front, from left to right as the outside is drawn. */
function outsideAreas(design: CoverDesign): ToolingArea[] {
  const { made } = design;
  const { narrow_mm: narrow, spine_mm: spine, foreEdge_mm: foreEdge } = design.job.tooling.margins;
  const { width, height } = made.outside;
  const y = overBoards(design);
  if (y === null) return [];
  const stretches = RANGE_POINTS.map((point) => wrapStretches(design, point));
  const faces = [
    { face: 'back', left: ['board edge', foreEdge], right: ['spine fold', spine] },
    { face: 'spine', left: ['spine fold', narrow], right: ['spine fold', narrow] },
    { face: 'front', left: ['spine fold', spine], right: ['board edge', foreEdge] },
  ] as const;
  const obstacles = outsideObstacles(design);
  return faces.flatMap(({ face, left, right }) => {
    const x = common(stretches.map((stretch) => stretch[face]));
    if (x === null) return [];
    const middle =
      face === 'spine' ? middleOf(stretches[RANGE_POINTS.indexOf('nominal')]!.spine ?? x) : seenMiddle(design, face);
    return area(
      design,
      {
        face,
        piece: 'outside',
        size: [width, height],
        flat: { x, y },
        centre: [middle, height / 2],
        ...sides(design, left, right),
      },
      obstacles,
    );
  });
}

/** Both pocket faces, as they are seen on the open book. */
function pocketAreas(design: CoverDesign): ToolingArea[] {
  const { job, made, needs, pieces } = design;
  const { spine_mm: spine, foreEdge_mm: foreEdge } = job.tooling.margins;
  const over = overBoards(design);
  if (over === null) return [];
  const isOnOutside = made.pocket.count === 0;
  const { width, height } = isOnOutside ? made.outside : made.pocket;
  // From the end that shows as the fore-edge: a pocket's cut edge, or where a turned end lies on the board.
  const begins = isOnOutside
    ? 0
    : Math.max(...RANGE_POINTS.map((point) => endOfRise(needs[point].foreEdge.margin, needs[point].foreEdgeSeat)));
  // At its corners a pocket comes down by the whole board at head and tail too.
  const y: Span = [Math.max(over[0], begins), Math.min(over[1], height - begins)];
  const mouth = (isOnOutside ? made.pocketDepth : width) - mouthSagitta(job, pieces) * (1 + changeOf(job).width);
  const from = isOnOutside ? width - made.pocketDepth : 0;
  const front: Span = [from + begins, from + mouth];
  const back: Span = [width - front[1], width - front[0]];
  const obstacles = pocketObstacles(design);
  return (['frontPocket', 'backPocket'] as const).flatMap((face) => {
    const x = face === 'frontPocket' ? front : back;
    const ends = [['board edge', foreEdge] as const, ['mouth', spine] as const];
    const [left, right] = face === 'frontPocket' ? ends : ends.toReversed();
    if (x[1] <= x[0] || y[1] <= y[0]) return [];
    return area(
      design,
      {
        face,
        piece: isOnOutside ? 'outside' : 'pocket',
        size: [width, height],
        flat: { x, y },
        centre: [middleOf(x), height / 2],
        isTurned: face === 'backPocket' && !isOnOutside,
        ...sides(design, left!, right!),
      },
      obstacles[face],
    );
  });
}

/** Where a pocket lies on the board, from its cut edge: margin and the whole curve of its seat. */
const endOfRise = (margin: number, seat: { readonly curve: { readonly length: number } } | null): number =>
  margin + (seat?.curve.length ?? 0);

/** The strap where it lies on the front, up to its fastening. */
function strapAreas(design: CoverDesign): ToolingArea[] {
  const strap = strapOf(design);
  if (strap === null) return [];
  const { narrow_mm: narrow } = design.job.tooling.margins;
  const across = 1 + changeOf(design.job).width;
  const length = strap.sum.total * across;
  // The pattern runs from the sewn end; on the closed book that end comes from the fore-edge, at the right of a reader.
  const x: Span = [length - strap.fastening * across + FASTENING, length - strap.reaches * across];
  if (x[1] <= x[0]) return [];
  return area(
    design,
    {
      face: 'strap',
      piece: 'strap',
      size: [length, strap.width],
      flat: { x, y: [0, strap.width] },
      centre: [middleOf(x), strap.width / 2],
      isTurned: true,
      bounds: { left: 'fastening', right: 'fore-edge', bottom: 'strap edge', top: 'strap edge' },
      margins: { left: narrow, right: narrow, bottom: narrow, top: narrow },
      growth: [across, 1],
    },
    [],
  );
}

type End = readonly [bound: ToolingArea['bounds'][Side], margin: number];

const sides = ({ job }: CoverDesign, left: End, right: End): Pick<ToolingArea, 'bounds' | 'margins'> => ({
  bounds: { left: left[0], right: right[0], bottom: 'board edge', top: 'board edge' },
  margins: {
    left: left[1],
    right: right[1],
    bottom: job.tooling.margins.tail_mm,
    top: job.tooling.margins.head_mm,
  },
});

const middleOf = ([from, to]: Span): number => (from + to) / 2;

type Span = Box2['x'];

/** What all spans have in common; null where that is nothing, or one of them is missing. */
function common(spans: readonly (Span | null)[]): Span | null {
  const known = spans.filter((span) => span !== null);
  const from = Math.max(...known.map((span) => span[0]));
  const to = Math.min(...known.map((span) => span[1]));
  return known.length === spans.length && to > from ? [from, to] : null;
}

/** The height that lies over the boards, from the tail cut edge, at every thickness. */
function overBoards(design: CoverDesign): Span | null {
  const height = design.made.outside.height;
  return common(
    RANGE_POINTS.map((point) => {
      const board = heightSegments(design, point).find(({ id }) => id === 'height')!;
      return [height - board.to, height - board.from];
    }),
  );
}

/** Where boards and spine lie under the outside of the closed cover, as it is drawn; null for a stretch that it has not. */
function wrapStretches(design: CoverDesign, point: RangePoint): Record<'front' | 'spine' | 'back', Span | null> {
  const { width } = design.made.outside;
  const drawn = (stretches: readonly StripSegment[]): Span | null => {
    const ends = stretches.flatMap(({ from, to }) => [width - from, width - to]);
    return ends.length === 0 ? null : [Math.min(...ends), Math.max(...ends)];
  };
  const wrap = stripSegments(design, point).filter(({ id, kind }) => OVER_BOOK.has(kind) || id === 'spineGap');
  const bends = wrap.filter(({ kind }) => kind === 'fold' || kind === 'spine');
  // Where no board turns into the spine, the leather is drawn straight over the fore-edges and lies on nothing.
  if (bends.length === 0) return { front: null, spine: null, back: null };
  return {
    front: drawn(wrap.slice(0, wrap.indexOf(bends[0]!))),
    spine: drawn(wrap.filter(({ id }) => id === 'spine' || id === 'spineGap')),
    back: drawn(wrap.slice(wrap.indexOf(bends.at(-1)!) + 1).filter(({ id }) => id !== 'spineGap')),
  };
}

const OVER_BOOK: ReadonlySet<StripSegment['kind']> = new Set(['board', 'bridge', 'fold', 'spine']);
