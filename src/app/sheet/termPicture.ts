import {
  type CoverDesign,
  coverSection,
  type PieceDrawing,
  patternDrawing,
  RANGE_POINTS,
  riseOf,
  type TermPart,
  type Vec2,
} from '../../core/index.ts';
import { layerShapes } from './layerShapes.ts';

/** One line or area of a small drawing, as SVG path data in mm with y running down. */
interface TermMark {
  readonly kind: 'pages' | 'board' | 'lining' | 'pocket' | 'outside' | 'seam' | 'line' | 'lit' | 'lit-line';
  readonly d: string;
}

/** A small drawing of a part of this book's cover, to scale, with what a term means lit. */
export interface TermPicture {
  /** What is drawn, in words. */
  readonly label: string;
  readonly box: readonly [left: number, top: number, width: number, height: number];
  readonly marks: readonly TermMark[];
}

type Lit = { readonly points: readonly Vec2[]; readonly isArea: boolean };

const area = (points: readonly Vec2[]): Lit => ({ points, isArea: true });
const line = (...points: readonly Vec2[]): Lit => ({ points, isArea: false });

const dataOf = (points: readonly Vec2[], isClosed: boolean): string =>
  `M${points.map(([x, y]) => `${x.toFixed(2)} ${(-y).toFixed(2)}`).join('L')}${isClosed ? 'Z' : ''}`;

const drawn = (kind: TermMark['kind'], points: readonly Vec2[]): TermMark => ({ kind, d: dataOf(points, true) });

const litMark = ({ points, isArea }: Lit): TermMark => ({
  kind: isArea ? 'lit' : 'lit-line',
  d: dataOf(points, isArea),
});

/** Height of a drawing over its width, and the smallest width shown, mm. */
const ASPECT = 0.6;
const LEAST_WIDTH = 24;

/** A box of the drawing's aspect round points, with room beside them. */
function boxAround(points: readonly Vec2[], least = LEAST_WIDTH): TermPicture['box'] {
  const xs = points.map(([x]) => x);
  const ys = points.map(([, y]) => -y);
  const [left, right, top, bottom] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)];
  const width = Math.max(least, 1.25 * (right - left), (1.25 * (bottom - top)) / ASPECT);
  const height = ASPECT * width;
  return [(left + right - width) / 2, (top + bottom - height) / 2, width, height];
}

/** The picture of a term; null where this cover has no such part, as a lining that is not there. */
export function termPicture(design: CoverDesign, part: TermPart): TermPicture | null {
  const [drawing, name] = part.split('.') as [string, string];
  switch (drawing) {
    case 'pattern':
      return patternPicture(design, name);
    case 'bend':
      return bendPicture(design, name);
    case 'range':
      return rangePicture(design, name);
    case 'chance':
      return chancePicture(design, name);
    case 'open':
      return sectionPicture(design, name, Math.PI);
    case 'ajar':
      return sectionPicture(design, name, AJAR);
    default:
      return sectionPicture(design, name, 0);
  }
}

/** Keeps the part of a polygon between two limits of x. */
const clipped = (polygon: readonly Vec2[], from: number, to: number): Vec2[] =>
  cutOff(cutOff(polygon, to, 1), from, -1);

/** Keeps the side of a polygon on which x is at most `limit`, or with -1 at least. */
function cutOff(polygon: readonly Vec2[], limit: number, side: 1 | -1): Vec2[] {
  return polygon.flatMap((point, i) => {
    const before = polygon.at(i - 1)!;
    const [isIn, wasIn] = [side * (point[0] - limit) <= 0, side * (before[0] - limit) <= 0];
    const share = (limit - before[0]) / (point[0] - before[0]);
    const crossing: Vec2 = [limit, before[1] + share * (point[1] - before[1])];
    return [...(isIn === wasIn ? [] : [crossing]), ...(isIn ? [point] : [])];
  });
}

/** Half length of what is lit at a joint, mm along the board: the groove of a usual hardback. */
const JOINT = 4;
/** A book a little open, radians. Free choice. */
const AJAR = Math.PI / 6;

function sectionPicture(design: CoverDesign, name: string, opening: number): TermPicture | null {
  const section = coverSection(design, 'nominal', opening);
  const { book, leathers, foreEdge } = design.needs.nominal;
  const fit = design.fits.nominal;
  const front = section.boards[0]!;
  const [inner, , outerEdge, outer] = front as readonly [Vec2, Vec2, Vec2, Vec2];
  /** u along the front board from the spine, v outward from its outer face, mm. */
  const at = (u: number, v: number): Vec2 => [
    outer[0] + ((outerEdge[0] - outer[0]) * u) / book.width + ((outer[0] - inner[0]) * v) / book.board,
    outer[1] + ((outerEdge[1] - outer[1]) * u) / book.width + ((outer[1] - inner[1]) * v) / book.board,
  ];
  const box = (from: number, to: number, low: number, high: number): Lit =>
    area([at(from, low), at(to, low), at(to, high), at(from, high)]);
  const stop = book.width + fit.foreEdge.front;
  const seam = stop + foreEdge.seat;
  const [low, high] = [-book.board - leathers.pocket.thickness, leathers.outside.thickness];
  const spine = clipped(section.outside, Number.NEGATIVE_INFINITY, 0);
  const [mouth] = at(book.width - fit.pocket.held, 0);
  const isSeamed = section.seams.length > 0;
  const backEdge = section.boards[1]![2]!;
  const parts: Readonly<Record<string, readonly Lit[]>> = {
    boards: section.boards.map(area),
    gap: [box(book.width, stop, -book.board, 0)],
    stop: [line(at(stop, low), at(stop, high))],
    margin: isSeamed ? [box(seam, seam + foreEdge.margin, low, high)] : [],
    pocket: section.pockets.slice(0, 1).map(area),
    hold: [box(book.width - fit.pocket.held, book.width, -book.board, 0)],
    outside: [area(section.outside)],
    wrap: [area(section.outside)],
    lining: section.lining === null ? [] : [area(section.lining)],
    pages: book.square > 0 ? [box(book.width - book.square, book.width, -book.board, 0)] : [],
    squash: section.pages.map((pages) => area(clipped(pages, mouth, Number.POSITIVE_INFINITY))),
    spine: [area(spine)],
    joints: section.boards.map((board) => {
      const [low, , , high] = board as readonly [Vec2, Vec2, Vec2, Vec2];
      const along = board === front ? 1 : -1;
      return area(
        [low, high].flatMap(([x, y], i): Vec2[] =>
          [-JOINT, JOINT].map((run): Vec2 => [x + (i === 0 ? run : -run), y + (i === 0 ? -along : along)]),
        ),
      );
    }),
    rise: riseOf(design.job.book) > 0 ? [line([0, 0], [-riseOf(design.job.book), 0])] : [],
    foreEdges: [line(outerEdge, backEdge)],
  };
  const lit = parts[name] ?? [];
  if (lit.length === 0) return null;
  // A book that lies open lies on its back, pages up.
  const lies = opening === Math.PI ? ([x, y]: Vec2): Vec2 => [-y, x] : (point: Vec2): Vec2 => point;
  const solid = (kind: TermMark['kind'], points: readonly Vec2[]): TermMark => drawn(kind, points.map(lies));
  const laid = lit.map(({ points, isArea }): Lit => ({ points: points.map(lies), isArea }));
  return {
    label: `Section across the spine of this book${opening === Math.PI ? ', lying open' : opening > 0 ? ', a little open' : ''}`,
    box: boxAround(laid.flatMap(({ points }) => points)),
    marks: [
      ...section.pages.map((pages) => solid('pages', pages)),
      ...section.boards.map((board) => solid('board', board)),
      ...(section.lining === null ? [] : [solid('lining', section.lining)]),
      ...section.pockets.map((pocket) => solid('pocket', pocket)),
      solid('outside', section.outside),
      ...section.seams.map((ends): TermMark => ({ kind: 'seam', d: dataOf(ends.map(lies), false) })),
      ...laid.map(litMark),
    ],
  };
}

const ARC_STEPS = 24;

/** A right-angled bend of the outside, pressed as at a seam, its inner side at the lower left. */
function bendPicture({ needs }: CoverDesign, name: string): TermPicture | null {
  const { thickness: t, neutral, bendRatio } = needs.nominal.leathers.outside;
  const inside = bendRatio * t;
  /** The line at a depth over the inner side, along both legs and the bend; the centre of the bend is the origin. */
  const at = (depth: number): Vec2[] => {
    const radius = inside + depth;
    const arc = Array.from({ length: ARC_STEPS + 1 }, (_, i): Vec2 => {
      const angle = (Math.PI * i) / (2 * ARC_STEPS);
      return [radius * Math.cos(angle), radius * Math.sin(angle)];
    });
    return [[radius, -2 * t], ...arc, [-2 * t, radius]];
  };
  const root = Math.SQRT1_2;
  const parts: Readonly<Record<string, Lit>> = {
    thickness: line([inside * root, inside * root], [(inside + t) * root, (inside + t) * root]),
    radius: line([0, 0], [inside * root, inside * root]),
    neutral: line(...at(neutral * t)),
    grain: line(...at(t)),
    flesh: line(...at(0)),
  };
  const lit = parts[name];
  if (lit === undefined) return null;
  const leather = [...at(0), ...at(t).reverse()];
  return {
    label: 'A bend of this leather, much enlarged',
    box: boxAround(leather, 0),
    marks: [drawn('outside', leather), litMark(lit)],
  };
}

function patternPicture(design: CoverDesign, name: string): TermPicture | null {
  const piece = patternDrawing(design).pieces[0]!;
  const { width, height } = piece;
  const shapes = layerShapes(piece);
  const layer = (which: string): string => shapes.find((shape) => shape.layer === which)?.data ?? '';
  const depth = design.made.pocketDepth;
  const bar = (from: number, to: number): string => `M${from} 0H${to}V${height}H${from}Z`;
  const holes = holePair(piece);
  const lits: Readonly<Record<string, readonly TermMark[]>> = {
    seam: [{ kind: 'lit-line', d: layer('seam') }],
    pitch: holes === null ? [] : [{ kind: 'lit-line', d: `M${holes.map(([x, y]) => `${x} ${height - y}`).join('L')}` }],
    head: [{ kind: 'lit-line', d: `M0 0H${width}` }],
    tail: [{ kind: 'lit-line', d: `M0 ${height}H${width}` }],
    ends:
      design.job.pockets.construction === 'turned'
        ? [{ kind: 'lit', d: bar(0, depth) + bar(width - depth, width) }]
        : [],
    backbone: [{ kind: 'lit-line', d: layer('direction') }],
  };
  const lit = (lits[name] ?? []).filter(({ d }) => d !== '');
  if (lit.length === 0) return null;
  const kinds = { cut: 'board', fold: 'line', seam: 'seam', hole: 'line' } as const;
  const marks = Object.entries(kinds).map(([which, kind]): TermMark => ({ kind, d: layer(which) }));
  const corners: readonly Vec2[] = [
    [0, 0],
    [width, -height],
  ];
  return {
    label: 'The outside of this cover, laid flat',
    box:
      name === 'pitch' && holes !== null ? boxAround(holes.map(([x, y]): Vec2 => [x, y - height])) : boxAround(corners),
    marks: [...marks, ...lit],
  };
}

/** Centres of two neighbouring holes or slits; null where there is no seam. */
function holePair({ layers }: PieceDrawing): readonly [Vec2, Vec2] | null {
  const centres = layers.hole.flatMap((hole): Vec2[] =>
    hole.kind === 'arc'
      ? [hole.centre]
      : hole.kind === 'line'
        ? [[(hole.from[0] + hole.to[0]) / 2, (hole.from[1] + hole.to[1]) / 2]]
        : [],
  );
  const [first, second] = centres;
  return first === undefined || second === undefined ? null : [first, second];
}

/** The outside at the ends and in the middle of its range, ten thicknesses long, one above the other. */
function rangePicture({ needs }: CoverDesign, name: string): TermPicture {
  const thicknesses = RANGE_POINTS.map((point) => needs[point].leathers.outside.thickness);
  const thickest = Math.max(...thicknesses);
  const bars = thicknesses.map((t, i): Vec2[] => {
    const y = -2 * thickest * i;
    return [
      [0, y],
      [10 * thickest, y],
      [10 * thickest, y + t],
      [0, y + t],
    ];
  });
  const names = ['thin', 'middle', 'thick'];
  return {
    label: 'This leather at its thin end, in the middle and at its thick end',
    box: boxAround(bars.flat(), 0),
    marks: bars.flatMap((bar, i) => [
      drawn('outside', bar),
      ...(name === 'all' || names[i] === name ? [litMark(area(bar))] : []),
    ]),
  };
}

/** How often each gap comes out at the fore-edges, with the line of no gap; the width is in mm, the height is not. */
function chancePicture({ fitDoubt }: CoverDesign, name: string): TermPicture | null {
  const { mean, u } = fitDoubt.gaps.foreEdge;
  if (!(u > 0)) return null;
  const tall = 2.4 * u;
  const at = (z: number): Vec2 => [mean + z * u, tall * Math.exp((-z * z) / 2)];
  const curve = Array.from({ length: 61 }, (_, i) => at((i - 30) / 10));
  const over = (from: number, to: number): Lit => {
    const inside = curve.filter(([x]) => x > from && x < to);
    const ends = [from, to].map((x) => Math.min(Math.max(x, mean - 3 * u), mean + 3 * u));
    return area([[ends[0]!, 0], ...inside, [ends[1]!, 0]]);
  };
  const lit = name === 'spread' ? over(mean - 2 * u, mean + 2 * u) : over(Math.max(0, mean - 3 * u), mean + 3 * u);
  return {
    label: 'How often each gap at the fore-edges comes out; the upright line is no gap',
    box: boxAround([...curve, [0, 0], [0, tall]], 0),
    marks: [
      drawn('board', curve),
      litMark(lit),
      {
        kind: 'line',
        d: dataOf(
          [
            [0, 0],
            [0, tall],
          ],
          false,
        ),
      },
    ],
  };
}
