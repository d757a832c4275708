import {
  holeShape,
  type PatternSource,
  type PieceDrawing,
  type Printer,
  placeOfHole,
  seamHoles,
  strideGroups,
} from '../../core/index.ts';
import { boxShape } from './boxShape.ts';
import { measured } from './outlineSteps.ts';

type Seam = ReturnType<typeof seamHoles>;
type Row = Seam['rows'][number];

/** Every so many holes their distance is given, so that the dividers do not stray. */
const COUNTED = 10;

/** Sentences for the holes or slits of a piece, by margin, number and pitch of each side. */
export function holeSteps(source: PatternSource, piece: PieceDrawing, print: Printer): string[] {
  const seam = seamHoles(source);
  const [tail] = seam.rows;
  if (tail === undefined) return [];
  const words = new HoleWords(source, seam, tail, print, boxShape(piece).taken.length > 0);
  switch (piece.id) {
    case 'outside':
    case 'half':
      return seam.isClosed ? [...words.closed(piece.id === 'half'), ...words.start()] : words.turned(piece);
    case 'pocket':
    case 'backPocket':
      return words.pocket();
    case 'lining':
      return piece.width >= source.pieces.outside.width ? words.closed(false) : words.lining(piece);
    case 'strap':
      return ['Lay its sewn end where it is sewn on, and prick its holes through the outside.'];
    case 'buckleTab':
      return ['Fold it about its bar, lay it at its mark on the front, and prick its holes through the outside.'];
    case 'penLoop':
      return ['Both ends are caught in the seam of the front fore-edge: prick its holes through them.'];
    default:
      // A tracing is no piece that is cut.
      return [];
  }
}

class HoleWords {
  private readonly source: PatternSource;
  private readonly seam: Seam;
  private readonly tail: Row;
  private readonly print: Printer;
  private readonly margin: string;
  /** What is said of corners that are taken off. */
  private readonly round: string;
  private readonly inCorner: string;

  constructor(source: PatternSource, seam: Seam, tail: Row, print: Printer, hasTakenCorners: boolean) {
    this.source = source;
    this.seam = seam;
    this.tail = tail;
    this.print = print;
    this.margin = print.size(source.job.seam.edgeMargin_mm);
    this.round = hasTakenCorners ? ', round the corners too' : '';
    this.inCorner = hasTakenCorners ? ', in the middle of its curve or cut' : '';
  }

  /** Round the whole piece. */
  closed(isHalf: boolean): string[] {
    const { tail, seam } = this;
    const side = seam.rows.find((row) => row.side === 'frontForeEdge')!;
    const half = Math.floor(tail.intervals / 2);
    const isOnFold = tail.intervals % 2 === 0;
    return [
      `Seam line: draw it ${this.margin} inside every edge${isHalf ? ' but the folded one' : ''}${this.round}.`,
      `Mark a hole at each corner of the seam line${this.inCorner}.`,
      isHalf
        ? `Tail and head: from the corner hole toward the fold mark ${this.spaces(half, tail)}. The last is ${isOnFold ? 'on the fold' : 'half a space from the fold'}.`
        : `Tail and head: from corner hole to corner hole divide the seam line into ${this.spaces(tail.intervals, tail)}.`,
      ...this.counted(isHalf ? half : tail.intervals, tail),
      `${isHalf ? 'Fore-edge: divide it' : 'Fore-edges: divide each'} likewise into ${this.spaces(side.intervals, side)}.`,
      ...this.shape(),
    ];
  }

  /** Where a closed seam starts and ends, hidden in the back pocket at the tail. */
  start(): string[] {
    const { tail, seam } = this;
    const [first] = seam.starts;
    const index = first === undefined ? -1 : tail.holes.indexOf(first);
    if (!seam.isClosed || index < 1) return [];
    const holes = this.print.count(tail.intervals - index, 'hole', 'holes');
    return [`The seam starts at the tail, ${holes} from the back corner, and ends one hole nearer to the front.`];
  }

  /** A row at tail and at head between turned ends. */
  turned({ id }: PieceDrawing): string[] {
    const { tail } = this;
    const first = tail.holes[0]?.at[0] ?? 0;
    const isHalf = id === 'half';
    const count = isHalf ? Math.floor(tail.intervals / 2) : tail.intervals;
    return [
      `Seam lines: draw them ${this.margin} inside AB and DC.`,
      `Mark the first hole on each ${measured(first, this.print)} from ${isHalf ? 'BC' : 'AD'}, then ${this.spaces(count, tail)}.`,
      ...this.counted(count, tail),
      ...this.shape(),
      'Fold each turned end, midway between its two fold lines. Prick the holes that it covers through it.',
    ];
  }

  pocket(): string[] {
    const { tail, seam } = this;
    const side = seam.rows.find((row) => row.side === 'frontForeEdge')!;
    const count = tail.holes.filter(({ layers }) => layers.includes('frontPocket')).length - 1;
    return [
      `Seam line: draw it ${this.margin} inside AB, DC and AD${this.round}. BC is the mouth.`,
      `Mark a hole at both corners of the seam line${this.inCorner}.`,
      `Fore-edge, AD: from corner hole to corner hole divide the seam line into ${this.spaces(side.intervals, side)}.`,
      `Tail and head: from the corner hole toward the mouth mark ${this.spaces(count, tail)}.`,
      ...this.shape(),
    ];
  }

  /** A lining that ends between the pockets. */
  lining({ width }: PieceDrawing): string[] {
    const { tail } = this;
    const holes = tail.holes.filter(({ layers }) => layers.includes('lining'));
    const [first] = holes;
    if (first === undefined) return [];
    const start = tail.holes.indexOf(first);
    const from = first.at[0] - (this.source.pieces.outside.width - width) / 2;
    return [
      `Seam lines: draw them ${this.margin} inside AB and DC.`,
      `Mark the first hole on each ${measured(from, this.print)} from AD, then ${this.spaces(holes.length - 1, tail, start)}.`,
      ...this.shape(),
    ];
  }

  /** So many spaces along a row from a hole of it, with their sizes. */
  private spaces(count: number, row: Row, from = 0): string {
    const spaces = this.print.count(count, 'space', 'spaces');
    const groups = strideGroups(row, from, from + count).map((group) => ({
      ...group,
      size: measured(group.pitch, this.print),
    }));
    return groups.length === 1
      ? `${spaces} of ${groups[0]!.size}`
      : `${spaces}: ${groups.map((group) => `${group.count} of ${group.size}`).join(', ')}`;
  }

  private counted(count: number, row: Row): string[] {
    const places = Array.from({ length: Math.floor((count - 1) / COUNTED) }, (_, i) =>
      this.print.length(placeOfHole(row, COUNTED * (i + 1))),
    );
    if (places.length === 0) return [];
    // The unit once, behind the last.
    const figures = places.map((place, i) => (i < places.length - 1 ? place.slice(0, place.lastIndexOf(' ')) : place));
    return [`Check there: every tenth space ends at ${figures.join(', ')} from the first hole.`];
  }

  private shape(): string[] {
    const { job } = this.source;
    const { size, slant: angle } = holeShape(job);
    if (angle === null) return [];
    const way = angle === 0 ? 'along the seam line' : `at ${this.print.angle(angle, 'nearest')} to the seam line`;
    return [`Each hole is a slit ${this.print.size(size)} long ${way}, its middle on the mark.`];
  }
}
