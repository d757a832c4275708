import type { Needs } from '../../allowance/needs.ts';
import { remembered } from '../../math/remembered.ts';
import { addScaled, heading, leftOf } from '../../math/vec2.ts';
import type { Pieces } from '../../pattern/pieces.ts';
import type { Skew } from './innerPath.ts';
import type { SectionPiece, WrapSection } from './wrapSection.ts';

/** How far the section stands from flat (0) to lying on the book (1), and the two folds of a turned end, radians. */
export interface SectionPosture {
  readonly wrapped: number;
  readonly turnedFolds: readonly [number, number];
}

/** A place on the section: the inner face and the neutral line, in the plane of the back half (y at most 0 when closed). */
export interface SectionPoint {
  /** Neutral length from the middle of the spine. */
  readonly d: number;
  /** Neutral length of the lining from the middle. */
  readonly liningD: number;
  /** On the neutral line. */
  readonly neutral: readonly [number, number];
  /** On the inner face, which board and pocket see. */
  readonly inner: readonly [number, number];
  /** Direction of the face, radians; the book is on its left. */
  readonly theta: number;
  readonly lining: number;
  readonly outside: number;
  /** Share of the turned end's upright that lies below this place: 0 outside the ends, 1 on the pocket. */
  readonly lift: number;
}

/** Half a section, spine to cut edge, on which any place can be found. */
export interface HalfSection {
  readonly pieces: readonly SectionPiece[];
  readonly middle: number;
  readonly skew: Skew | undefined;
  /** Outside's neutral fraction K. */
  readonly neutralFraction: number;
  readonly length: number;
  readonly toFoldEnd: number;
  readonly toTip: number;
  /** Seam line, or the outer corner of a turned end. */
  readonly toSeam: number;
  readonly toLiningEnd: number;
  /** Board tip to its seat, mm. */
  readonly gap: number;
  /** How far from the tip the cover lies on the board, mm; undefined where it lies on it as far as it can. */
  readonly held: number | undefined;
}

/** A stretch in the outside's full thickness. */
const stretch = (needs: Needs, lining: number, length: number, angle = 0, fold: SectionPiece['fold'] = 0) =>
  ({
    length,
    angle,
    slope: 0,
    faceLength: length - angle * (lining + needs.leathers.outside.neutral * needs.leathers.outside.thickness),
    liningLength: lining > 0 ? length : 0,
    lining: [lining, lining],
    outside: [needs.leathers.outside.thickness, needs.leathers.outside.thickness],
    fold,
  }) satisfies SectionPiece;

/** The end beyond the board tip: room and seat and edge margin, or room, the turn round the board edge and the pocket. */
function endPieces(needs: Needs, lining: number, room: number, pocketDepth: number): SectionPiece[] {
  const { margin, turn } = needs.foreEdge;
  if (turn === 0) return [stretch(needs, lining, room), stretch(needs, lining, margin)];
  const { neutral, thickness } = needs.leathers.outside;
  const corner = (Math.PI / 2) * neutral * thickness;
  return [
    stretch(needs, lining, room),
    stretch(needs, lining, corner, Math.PI / 2, 1),
    stretch(needs, lining, needs.book.board),
    stretch(needs, lining, corner, Math.PI / 2, 2),
    stretch(needs, lining, pocketDepth),
  ];
}

const total = (pieces: readonly SectionPiece[]): number => pieces.reduce((sum, { length }) => sum + length, 0);

/**
 * Adds an end to the section.
 * @param gap from board tip to seat, mm; 0 or more, or negative where the leather is stretched
 */
export function halfSection(section: WrapSection, needs: Needs, gap: number, pocketDepth: number): HalfSection {
  const lining = section.pieces[section.pieces.length - 1]!.lining[1];
  const room = gap + needs.foreEdge.seat;
  const end = endPieces(needs, lining, room, pocketDepth);
  const length = section.toTip + total(end);
  return {
    pieces: [...section.pieces, ...end],
    middle: section.middle,
    skew: section.skew,
    neutralFraction: needs.leathers.outside.neutral,
    length,
    toFoldEnd: section.toFoldEnd,
    toTip: section.toTip,
    toSeam: section.toTip + room,
    toLiningEnd: lining > 0 ? length : section.toLiningEnd,
    gap,
    held: section.held,
  };
}

/** Half of a cover that lies flat without a book, its fore-edge seat where the pattern has it. */
export function flatHalf(cut: Pieces, needs: Needs): HalfSection {
  const half = cut.outside.width / 2;
  const { seat, margin, turn } = needs.foreEdge;
  const room = Math.min(seat, Math.max(0, half - margin - LEAST));
  const depth = turn > 0 ? Math.min(cut.pocketDepth, Math.max(LEAST, half - turn - 2 * LEAST)) : 0;
  const toTip = half - room - margin - turn - depth;
  const lining = needs.leathers.lining?.thickness ?? 0;
  const reach = lining > 0 ? Math.min(cut.lining?.width ?? 0, cut.outside.width) / 2 : 0;
  const lined = Math.min(reach, toTip);
  const through = reach > toTip && turn === 0 ? lining : 0;
  const body = [stretch(needs, lining, lined), stretch(needs, through, toTip - lined)].filter(
    ({ length }) => length > 0,
  );
  return {
    pieces: [...body, ...endPieces(needs, through, room, depth)],
    middle: 0,
    skew: undefined,
    neutralFraction: needs.leathers.outside.neutral,
    length: half,
    toFoldEnd: Math.min(needs.book.spinePath / 2, toTip),
    toTip,
    toSeam: toTip + room,
    toLiningEnd: through > 0 ? half : lined,
    gap: 0,
    held: undefined,
  };
}

/** Length of the inner face from the middle to the fore-edge seam, mm. */
const seamOnFace = remembered((half: HalfSection): number => faceAt(half, half.toSeam));

/** Distance in from the fore-edge seam on the inner face of a place at a neutral length d from the middle, mm. */
export const inFromSeam = (half: HalfSection, d: number): number => seamOnFace(half) - faceAt(half, d);

/** Neutral length from the middle of the place that lies so far in from the fore-edge seam on the inner face, mm. */
export const neutralAt = (half: HalfSection, fromSeam: number): number =>
  otherLength(half, 'faceLength', 'length', seamOnFace(half) - fromSeam);

const faceAt = (half: HalfSection, d: number): number => otherLength(half, 'length', 'faceLength', d);

/** A length from the middle along one line of the section, as it is along another. */
function otherLength({ pieces }: HalfSection, from: LineLength, to: LineLength, at: number): number {
  let [start, other] = [0, 0];
  for (const piece of pieces) {
    const own = piece[from];
    if (own > 0 && at <= start + own) return other + (piece[to] * (at - start)) / own;
    start += own;
    other += piece[to];
  }
  return other + at - start;
}

type LineLength = 'length' | 'faceLength';

const UPRIGHT: Skew = { aside: 0, lean: 0 };

/** Least length of a stretch of a cover far too small for its book, mm. */
const LEAST = 0.1;

/**
 * Places on the section at neutral lengths `at`.
 *
 * The tangent angle of the neutral line is scaled by `wrapped`, which leaves every length as it is: the flat pattern at
 * 0, the cover on its book at 1. The middle of the spine stays where it is.
 * @param at neutral lengths from the middle, in rising order, mm
 */
export function placeSection(half: HalfSection, at: readonly number[], posture: SectionPosture): SectionPoint[] {
  const { wrapped, turnedFolds } = posture;
  const first = half.pieces[0]!;
  const { aside, lean } = half.skew ?? UPRIGHT;
  let theta = lean - Math.PI / 2;
  const depth = first.lining[0] + half.neutralFraction * first.outside[0];
  let [x, y] = addScaled([half.middle, aside], leftOf(heading(theta)), -depth);
  let start = 0;
  let liningStart = 0;
  let folds = 0;
  const out: SectionPoint[] = [];
  let next = 0;
  half.pieces.forEach((piece, index) => {
    const isLast = index === half.pieces.length - 1;
    const turned = piece.fold === 0 ? piece.angle * wrapped : turnedFolds[piece.fold - 1]!;
    const slope = piece.slope * wrapped;
    const place = (along: number): [number, number, number] => {
      if (turned === 0) return [x + along * Math.cos(theta + slope), y + along * Math.sin(theta + slope), theta];
      const angle = (turned * along) / piece.length;
      const radius = piece.length / turned;
      return [
        x + radius * (Math.sin(theta + slope + angle) - Math.sin(theta + slope)),
        y - radius * (Math.cos(theta + slope + angle) - Math.cos(theta + slope)),
        theta + angle,
      ];
    };
    while (next < at.length && (isLast || at[next]! <= start + piece.length)) {
      const along = at[next]! - start;
      const share = piece.length > 0 ? along / piece.length : 0;
      const [nx, ny, direction] = place(along);
      const lining = piece.lining[0] + (piece.lining[1] - piece.lining[0]) * share;
      const outside = piece.outside[0] + (piece.outside[1] - piece.outside[0]) * share;
      const offset = lining + half.neutralFraction * outside;
      out.push({
        d: at[next]!,
        liningD: liningStart + piece.liningLength * share,
        neutral: [nx, ny],
        inner: [nx - offset * Math.sin(direction), ny + offset * Math.cos(direction)],
        theta: direction,
        lining,
        outside,
        lift: piece.fold === 2 || folds === 2 ? 1 : folds === 1 ? share : 0,
      });
      next++;
    }
    [x, y, theta] = place(piece.length);
    start += piece.length;
    liningStart += piece.liningLength;
    if (piece.fold > 0) folds = piece.fold;
  });
  return out;
}

/** Places where a column of the mesh is wanted: both ends of every stretch, and enough along every bend. */
export function sectionStops(half: HalfSection): number[] {
  const stops = [0];
  let start = 0;
  for (const piece of half.pieces) {
    const turn = Math.abs(piece.angle);
    if (turn > 0) {
      const inner = Math.max(0, piece.length / turn);
      const step = Math.min(MAX_TURN, 2 * Math.sqrt((2 * MAX_SAGITTA) / Math.max(inner, 1e-3)));
      const count = Math.ceil(turn / step);
      for (let i = 1; i < count; i++) stops.push(start + (piece.length * i) / count);
    }
    const thins = Math.abs(piece.lining[1] - piece.lining[0]);
    const parts = turn === 0 && piece.lining[0] > 0 ? Math.ceil(thins / LAYER_STEP) : 1;
    for (let i = 1; i < parts; i++) stops.push(start + (piece.length * i) / parts);
    start += piece.length;
    stops.push(start);
  }
  return stops;
}

/** Most by which a lining may thin out from one column to the next, mm. */
const LAYER_STEP = 0.4;
/** Largest turn of one facet, radians (5 degrees), and how far a facet may stand off its curve, mm. */
const MAX_TURN = (5 * Math.PI) / 180;
const MAX_SAGITTA = 0.005;
