import { type ReactNode, useState } from 'react';
import {
  addScaled,
  bookModel,
  CLOSED,
  fieldNote,
  type Job,
  type JobPath,
  outlinePolygon,
  type Printer,
  type Vec2,
  valueAt,
} from '../../core/index.ts';
import { useBench, useLengths } from '../state/BenchContext.tsx';
import './form.css';

interface MeasuresProps {
  readonly title: string;
  /** As for the picture. */
  readonly book?: Job['book'];
  readonly children: ReactNode;
}

/** Fields of measures, and beside them the picture of the measure in use. */
export function Measures({ title, book, children }: MeasuresProps) {
  const [active, setActive] = useState<Pictured | null>(null);
  return (
    <fieldset
      className="measures"
      aria-label={title}
      onFocus={({ target }) => setActive(picturedAt(target.dataset.path))}
      onBlur={() => setActive(null)}
    >
      <div>{children}</div>
      <MeasurePicture active={active} book={book} />
    </fieldset>
  );
}

interface MeasurePictureProps {
  /** Path of the measure that is being typed; null shows them all alike. */
  readonly active: Pictured | null;
  /** The book that is pictured; that of the open job by default. One that is half an example has no measures to be said. */
  readonly book?: Job['book'] | undefined;
}

/** The closed book in two views, front and tail, in its own proportions, with the measure that is being typed marked. */
export function MeasurePicture({ active, book: pictured }: MeasurePictureProps) {
  const ofJob = useBench(({ history }) => history.good.job.book);
  const book = pictured ?? ofJob;
  const lengths = useLengths();
  const { width, height, thickness, rise, board, square } = bookModel(book);
  // Everything beside the book itself is drawn in hundredths of its width, so that it looks alike at every size.
  const unit = (width + rise) / 100;
  const tailY = height + 26 * unit + thickness / 2;
  const foreEdge = book.foreEdgeThickness_mm;
  const outline = outlinePolygon(
    bookModel({ ...book, cornerRadius_mm: 0 as typeof book.cornerRadius_mm }),
    CLOSED,
  ).points;
  const tail = (points: readonly Vec2[]): string => points.map(([x, y]) => `${x},${tailY - y}`).join(' ');
  const tape = roundTheOutside(outline, 4 * unit);
  const half = tape.slice(0, Math.ceil(tape.length / 2));
  const left = -rise - 20 * unit;
  const top = -8 * unit;
  const flat = 2 * width + thickness;
  const flatScale = (width + rise) / flat;
  const flatY = tailY + Math.max(thickness, foreEdge) / 2 + 30 * unit;
  const lyingOpen = openBook(width, thickness, 3 * unit).map(
    ([x, y]) => `${-rise + x * flatScale},${flatY - 6 * unit - y * flatScale}`,
  );
  const mark = (path: Pictured, drawing: ReactNode) => (
    <g className={active === path ? 'measure active' : 'measure'}>{drawing}</g>
  );
  const dimension = (from: Vec2, to: Vec2) => <Dimension from={from} to={to} size={2.2 * unit} />;

  return (
    <figure className="measure-picture">
      <svg
        viewBox={`${left} ${top} ${width + 22 * unit - left} ${flatY + 8 * unit - top}`}
        role="img"
        aria-label="The closed book from the front and from its tail, with its measures"
      >
        <rect className="body" x={0} y={0} width={width} height={height} />
        <rect className="text-block" x={0} y={square} width={width - square} height={height - 2 * square} />
        {mark('book.jointDip_mm', <line className="joint" x1={7 * unit} y1={0} x2={7 * unit} y2={height} />)}
        <polygon className="body" points={tail(outline)} />
        <polygon
          className="text-block sheet"
          points={tail([
            [board, thickness / 2 - board],
            [width - square, foreEdge / 2 - board],
            [width - square, board - foreEdge / 2],
            [board, board - thickness / 2],
          ])}
        />
        {mark('book.height_mm', dimension([width + 9 * unit, 0], [width + 9 * unit, height]))}
        {mark('book.square_mm', dimension([width - square, height / 2], [width, height / 2]))}
        {mark('book.width_mm', dimension([0, height + 8 * unit], [width, height + 8 * unit]))}
        {mark(
          'book.thickness_mm',
          dimension([-rise - 11 * unit, tailY - thickness / 2], [-rise - 11 * unit, tailY + thickness / 2]),
        )}
        {mark(
          'book.foreEdgeThickness_mm',
          dimension([width + 15 * unit, tailY - foreEdge / 2], [width + 15 * unit, tailY + foreEdge / 2]),
        )}
        {mark(
          'book.boardThickness_mm',
          dimension([width + 9 * unit, tailY - foreEdge / 2], [width + 9 * unit, tailY - foreEdge / 2 + board]),
        )}
        {mark('book.cornerRadius_mm', <circle className="tape" cx={0} cy={tailY - thickness / 2} r={4 * unit} />)}
        {rise > 0 && mark('book.spine.rise_mm', dimension([-rise, tailY], [0, tailY]))}
        {mark('book.measured.closedWrap_mm', <polyline className="tape" points={tail(tape)} />)}
        {mark('book.measured.rolledHalf_mm', <polyline className="tape" points={tail(half)} />)}
        <polygon className="text-block sheet" points={lyingOpen.join(' ')} />
        {mark('book.measured.openFlatWidth_mm', dimension([-rise, flatY], [-rise + flat * flatScale, flatY]))}
      </svg>
      {pictured === undefined && <figcaption>{active !== null && caption(active, book, lengths)}</figcaption>}
    </figure>
  );
}

/** Which measure it is, and what it was understood to be. */
function caption(active: Pictured, book: Job['book'], lengths: Printer): string {
  const value = valueAt({ book }, active);
  const taken = typeof value === 'number' ? ` ${lengths.size(value)}` : '';
  return `${fieldNote(active).title}${taken}${active === 'book.measured.openFlatWidth_mm' ? ', drawn to a smaller scale' : ''}`;
}

/** The paths that the picture can mark. */
const PICTURED = [
  'book.width_mm',
  'book.height_mm',
  'book.thickness_mm',
  'book.foreEdgeThickness_mm',
  'book.boardThickness_mm',
  'book.square_mm',
  'book.spine.rise_mm',
  'book.cornerRadius_mm',
  'book.jointDip_mm',
  'book.measured.closedWrap_mm',
  'book.measured.rolledHalf_mm',
  'book.measured.openFlatWidth_mm',
] as const satisfies readonly JobPath[];

type Pictured = (typeof PICTURED)[number];

/** The measure of an entry that the picture can mark, from the path that stands on it; null for any other. */
const picturedAt = (path: string | undefined): Pictured | null => PICTURED.find((known) => known === path) ?? null;

/** A tape round the outline, at a distance that shows it beside the book. */
function roundTheOutside(outline: readonly Vec2[], away: number): Vec2[] {
  const middle: Vec2 = [outline[0]![0] / 2, 0];
  return outline.map((point, i) => {
    const isTip = i === 0 || i === outline.length - 1;
    if (isTip) return [point[0], point[1] + Math.sign(point[1]) * away];
    const out: Vec2 = [point[0] - middle[0], point[1] - middle[1]];
    return addScaled(
      point,
      [Math.sign(out[0]), Math.sign(out[1]) * (Math.abs(point[1]) < away ? point[1] / away : 1)],
      away,
    );
  });
}

/** The book lying open, seen from its tail: cover below, the two halves of the pages rounded over it; up is positive. */
function openBook(width: number, thickness: number, edge: number): Vec2[] {
  const middle = width + thickness / 2;
  const bulk = Math.max(edge, thickness / 2);
  const half: Vec2[] = [
    [0, 0],
    [0, edge],
    [edge, edge + bulk * 0.6],
    [middle * 0.5, edge + bulk],
    [middle * 0.85, edge + bulk * 0.8],
    [middle, edge],
  ];
  return [...half, ...half.map(([x, y]): Vec2 => [2 * middle - x, y]).reverse()];
}

interface DimensionProps {
  readonly from: Vec2;
  readonly to: Vec2;
  /** Length of the strokes at its ends, mm. */
  readonly size: number;
}

/** A dimension line with oblique strokes at its ends, as on a workshop drawing. */
function Dimension({ from, to, size }: DimensionProps) {
  return (
    <>
      <line x1={from[0]} y1={from[1]} x2={to[0]} y2={to[1]} />
      <Stroke at={from} size={size} />
      <Stroke at={to} size={size} />
    </>
  );
}

const Stroke = ({ at: [x, y], size }: { readonly at: Vec2; readonly size: number }) => (
  <line x1={x - size} y1={y + size} x2={x + size} y2={y - size} />
);
