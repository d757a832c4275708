import type { Artwork, ToolingDesign } from '../job/toolingSchema.ts';
import type { Vec2 } from '../math/vec2.ts';
import { readArtworkLines } from './artworkLines.ts';
import { borderLines } from './border.ts';
import type { LetterFace } from './letterFace.ts';
import type { ToolingArea } from './toolingArea.ts';

/** Corners of a picture laid on the leather: its top left, and the vectors along its top edge and down its left edge. */
export interface PlacedPicture {
  readonly artwork: Extract<Artwork, { kind: 'picture' }>;
  readonly origin: Vec2;
  readonly along: Vec2;
  readonly down: Vec2;
}

/** A design on its area, mm on the finished face. */
export interface PlacedDesign {
  readonly design: ToolingDesign;
  /** A closed line ends with its first point. */
  readonly lines: readonly (readonly Vec2[])[];
  readonly pictures: readonly PlacedPicture[];
  /** Why something of the design is not there, in words; empty where all is. */
  readonly lacking: readonly string[];
}

/** The faces of letters by their id, as far as they are loaded. */
export type LetterFaces = ReadonlyMap<string, LetterFace>;

/** The face that a title without one is set in: the first of all. */
export const faceOf = (faces: LetterFaces, id: string): LetterFace | undefined =>
  id === '' ? [...faces.values()][0] : faces.get(id);

/** Places a design on its area. What cannot be drawn is named in `lacking`; nothing is thrown. */
export function placedDesign(
  design: ToolingDesign,
  area: ToolingArea,
  artworks: readonly Artwork[],
  faces: LetterFaces,
): PlacedDesign {
  if (design.kind === 'border') {
    const lines = area.clear === null ? [] : borderLines(design, area.clear);
    const left = design.lines - lines.length;
    return {
      design,
      lines,
      pictures: [],
      lacking: left === 0 ? [] : [left === design.lines ? 'no room for the border' : 'no room for the inner line'],
    };
  }
  const copies = copiesOf(design, area.centre);
  if (design.kind === 'title') {
    const set = titleLines(design, faces);
    return {
      design,
      lines: copies.flatMap((place) => set.lines.map((line) => line.map(place))),
      pictures: [],
      lacking: set.lacking,
    };
  }
  const artwork = artworks.find(({ id }) => id === design.artwork);
  if (artwork === undefined) return { design, lines: [], pictures: [], lacking: ['its drawing is not in the job'] };
  const scale = design.width_mm / artwork.width;
  const [left, top] = [-design.width_mm / 2, (artwork.height * scale) / 2];
  if (artwork.kind === 'picture')
    return {
      design,
      lines: [],
      pictures: copies.map((place) => {
        const origin = place([left, top]);
        const to = (point: Vec2): Vec2 => {
          const [x, y] = place(point);
          return [x - origin[0], y - origin[1]];
        };
        return { artwork, origin, along: to([-left, top]), down: to([left, -top]) };
      }),
      lacking: [],
    };
  const drawn = artworkPoints(artwork);
  const lines = copies.flatMap((place) =>
    drawn.map((line) => line.map(([x, y]) => place([left + x * scale, top - y * scale]))),
  );
  return { design, lines, pictures: [], lacking: drawn.length === 0 ? ['its drawing cannot be read'] : [] };
}

type Placing = Extract<ToolingDesign, { kind: 'title' | 'drawing' }>;

/** What each copy of a design does to a place of it, given from its centre: mirror, turn, step, and out from the centre lines. */
function copiesOf({ x_mm, y_mm, turn_deg, mirrored, repeat, ...design }: Placing, centre: Vec2) {
  const reading = design.kind === 'title' ? READING[design.reading] : 0;
  const angle = ((turn_deg + reading) * Math.PI) / 180;
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  const { columns, rows, stepX_mm, stepY_mm } = repeat;
  return Array.from({ length: columns * rows }, (_, i) => {
    const [column, row] = [i % columns, Math.floor(i / columns)];
    const x = centre[0] + x_mm + (column - (columns - 1) / 2) * stepX_mm;
    const y = centre[1] + y_mm - (row - (rows - 1) / 2) * stepY_mm;
    return ([u, v]: Vec2): Vec2 => {
      const across = mirrored ? -u : u;
      return [x + cos * across - sin * v, y + sin * across + cos * v];
    };
  });
}

/** Turn of a line of text, degrees: down the spine its letters' heads are toward the front. */
const READING = { across: 0, down: -90, up: 90 } as const;

/** A title about the middle of its width and of its capitals. */
function titleLines({ text, face: id, height_mm }: Extract<ToolingDesign, { kind: 'title' }>, faces: LetterFaces) {
  const face = faceOf(faces, id);
  if (face === undefined)
    return { lines: [], lacking: [`its letters "${id}" are not among those that come with the tool`] };
  const { polylines, width } = face.outline(text);
  const lines = polylines.map((line) =>
    line.map(([x, y]): Vec2 => [(x - width / 2) * height_mm, (y - 0.5) * height_mm]),
  );
  const lacks = face.lacks(text);
  return { lines, lacking: lacks.length === 0 ? [] : [`${face.title} has no letter for ${lacks.join(' ')}`] };
}

/** Lines of a drawing in its grid; a job's drawing is decoded once, however often it is placed or edited. */
function artworkPoints(artwork: Extract<Artwork, { kind: 'lines' }>): readonly (readonly Vec2[])[] {
  const known = decoded.get(artwork.lines);
  if (known !== undefined) return known;
  const read = readArtworkLines(artwork.lines);
  const polylines = 'polylines' in read ? read.polylines : [];
  // A session opens a few drawings; those of jobs closed long ago go first.
  if (decoded.size >= KEPT) decoded.delete(decoded.keys().next().value!);
  decoded.set(artwork.lines, polylines);
  return polylines;
}

const KEPT = 24;
const decoded = new Map<string, readonly (readonly Vec2[])[]>();
