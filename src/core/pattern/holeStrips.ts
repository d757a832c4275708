import { rectangle, type Segment } from '../math/contour.ts';
import { distance, type Vec2 } from '../math/vec2.ts';
import { printer } from '../units/printer.ts';
import { line, noLayers, type PieceDrawing, path, type Text } from './drawing.ts';
import { holeWords } from './holeMarks.ts';
import { faceUp } from './letteredPiece.ts';
import { seamMarks } from './outsideDrawing.ts';
import { holeShape, type PatternSource, type Seam, type SeamRow, sideName } from './seam.ts';
import { seamHoles } from './seamHoles.ts';
import { textWidth } from './textBox.ts';

/** Fewer holes than these are pricked by the template. */
const FEWEST = 3;

/** How far off places on two strips, or a hole off the seam line, may lie, mm. */
const SAME = 1e-6;

const TEXT = { height: 2.7, leading: 3.8 } as const;
/** From a hole to the mark of the first and the last, its length, and clear space at the ends of words, mm. */
const MARK = { from: 0.8, long: 1.6 } as const;
const CLEAR = 2;

/** A side of the outside with its holes, its cut edge laid level below them: x along it from its left end. */
interface Run {
  readonly row: Pick<SeamRow, 'side' | 'pitch' | 'uneven'>;
  readonly length: number;
  readonly holes: readonly Segment[];
}

/**
 * The straight runs of the seam as narrow strips in true size, for pricking along a rule: the lower edge of a strip is laid along the
 * cut edge of the outside, its ends at the ends of the side, and its holes lie where those of the pattern do. Sides with the
 * same run are one strip. Pockets and lining have the same holes under those of the outside.
 *
 * Holes on the arc or bevel of a corner are on no strip.
 * @param source a `CoverDesign`, or any job with its pieces and needs
 * @returns a piece for each strip, none for a job without a seam
 */
export function holeStrips(source: PatternSource): PieceDrawing[] {
  const seam = seamHoles(source);
  const alike: Run[][] = [];
  for (const run of runsOf(source, seam)) {
    const known = alike.find(([first]) => isSame(first!, run));
    if (known === undefined) alike.push([run]);
    else known.push(run);
  }
  return alike.map((runs) => strip(source, runs));
}

function runsOf(source: PatternSource, seam: Seam): Run[] {
  const { job, pieces } = source;
  const { width, height } = pieces.outside;
  const marks = seamMarks(source, seam);
  // From the piece, grain side up with the front at the right, to its side with the cut edge below.
  const sides = {
    tail: { length: width, laid: ([x, y]: Vec2): Vec2 => [x, y], turn: 0 },
    head: { length: width, laid: ([x, y]: Vec2): Vec2 => [width - x, height - y], turn: Math.PI },
    frontForeEdge: { length: height, laid: ([x, y]: Vec2): Vec2 => [y, width - x], turn: -Math.PI / 2 },
    backForeEdge: { length: height, laid: ([x, y]: Vec2): Vec2 => [height - y, x], turn: Math.PI / 2 },
  } as const;
  return seam.rows.flatMap((row) => {
    const { length, laid, turn } = sides[row.side];
    const holes = marks
      .map(
        (mark): Segment =>
          mark.kind === 'line'
            ? line(laid(mark.from), laid(mark.to))
            : { ...mark, centre: laid(mark.centre), start: mark.start + turn },
      )
      .filter((mark) => Math.abs(middle(mark)[1] - job.seam.edgeMargin_mm) < SAME)
      .sort((a, b) => middle(a)[0] - middle(b)[0]);
    return holes.length < FEWEST ? [] : [{ row, length, holes }];
  });
}

const middle = (mark: Segment): Vec2 =>
  mark.kind === 'line' ? [(mark.from[0] + mark.to[0]) / 2, (mark.from[1] + mark.to[1]) / 2] : mark.centre;

function isSame(a: Run, b: Run): boolean {
  if (Math.abs(a.length - b.length) > SAME || a.holes.length !== b.holes.length) return false;
  return a.holes.every((hole, i) => {
    const other = b.holes[i]!;
    if (distance(middle(hole), middle(other)) > SAME) return false;
    if (hole.kind !== 'line' || other.kind !== 'line') return hole.kind === other.kind;
    const apart = (from: Vec2, to: Vec2): number => distance(hole.from, from) + distance(hole.to, to);
    return Math.min(apart(other.from, other.to), apart(other.to, other.from)) < SAME;
  });
}

function strip(source: PatternSource, runs: readonly Run[]): PieceDrawing {
  const { job } = source;
  const { row, length, holes } = runs[0]!;
  const { small } = printer(job.work.units);
  const sides = runs.map(({ row: { side } }) => sideName(side)).join(' and ');
  const { uneven } = row;
  const said = [
    `Hole strip, ${sides}`,
    `${holeWords(job, holes.length)}, pitch ${small(row.pitch)}${uneven === undefined ? '' : `, in the middle ${uneven.count} × ${small(uneven.pitch)}`}`,
    `${faceUp(source)}, lower edge along the cut edge`,
  ];
  const rows = packed(said, length - 2 * CLEAR);

  const top = job.seam.edgeMargin_mm + holeShape(job).size / 2 + MARK.from;
  const ends = [holes[0]!, holes.at(-1)!].map((hole) => middle(hole)[0]) as [number, number];
  const base = top + MARK.long + 0.8;
  const height = Math.ceil(base + TEXT.height + rows.length * TEXT.leading + 1);
  const text = (words: string, x: number, y: number): Text => ({
    kind: 'text',
    at: [x, y],
    height: TEXT.height,
    rotation: 0,
    align: 'start',
    block: [x, x + textWidth(words, TEXT.height)],
    text: words,
  });
  const low = (words: string): number => length - CLEAR - textWidth(words, TEXT.height);
  const outline = rectangle([0, 0], [length, height]);
  const layers = noLayers();
  layers.cut.push(path(outline, true));
  layers.hole.push(...holes);
  layers.mark.push(...ends.map((x) => line([x, top], [x, top + MARK.long])));
  layers.text.push(
    text('first', Math.max(CLEAR, ends[0] - 2), base),
    text('last', Math.min(low('last'), ends[1] - 2), base),
    ...rows.map((words, i) => text(words, CLEAR, base + (rows.length - i) * TEXT.leading)),
  );
  return {
    id: `${row.side}Strip`,
    name: `Hole strip, ${sides}`,
    count: 1,
    width: length,
    height,
    outline,
    layers,
    sums: [],
    holes: holes.length,
    unwritten: [],
  };
}

/** Parts of a label set one after another on as few lines of a width as their order allows. */
function packed(said: readonly string[], width: number): string[] {
  const rows: string[] = [];
  for (const words of said) {
    const longer = rows.length === 0 ? words : `${rows.at(-1)}; ${words}`;
    if (rows.length > 0 && textWidth(longer, TEXT.height) <= width) rows[rows.length - 1] = longer;
    else rows.push(words);
  }
  return rows;
}
