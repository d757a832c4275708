import type { Artwork, ToolingDesign } from '../job/toolingSchema.ts';
import type { Vec2 } from '../math/vec2.ts';
import type { Picture } from '../pattern/drawing.ts';
import { readArtworkLines } from './artworkLines.ts';
import { borderLines } from './border.ts';
import { cached } from './cached.ts';
import type { LetterFace } from './letterFace.ts';
import type { ToolingArea } from './toolingArea.ts';

/** A picture laid on the leather, mm on the finished face. */
export type PlacedPicture = Omit<Picture, 'kind'>;

/** A design on its area, mm on the finished face. */
export interface PlacedDesign {
  readonly design: ToolingDesign;
  /** A closed line ends with its first point. */
  readonly lines: readonly (readonly Vec2[])[];
  readonly pictures: readonly PlacedPicture[];
  /** Why something of the design is not there, in words; empty where all is. */
  readonly lacking: readonly string[];
}

/** The faces of letters by the ids that titles name, as far as they are loaded. */
export type LetterFaces = ReadonlyMap<string, LetterFace>;

/** The ids of the faces that titles are set in, each once; '' for the usual one. */
export const letterIds = (designs: readonly ToolingDesign[]): string[] => [
  ...new Set(designs.flatMap((design) => (design.kind === 'title' ? [design.face] : []))),
];

/** The face of an id; one without an id is kept as '', or is the first of all. */
export const faceOf = (faces: LetterFaces, id: string): LetterFace | undefined =>
  faces.get(id) ?? (id === '' ? faces.values().next().value : undefined);

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
  const copies = designCopies(design, area.centre).map(onCopy);
  if (design.kind === 'title') {
    const set = titleLines(design, faces);
    const { lines, tooMany } = copied(set.lines, copies);
    return { design, lines, pictures: [], lacking: [...set.lacking, ...tooMany] };
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
  const scaled = drawn.map((line) => line.map(([x, y]): Vec2 => [left + x * scale, top - y * scale]));
  const { lines, tooMany } = copied(scaled, copies);
  return { design, lines, pictures: [], lacking: drawn.length === 0 ? ['its drawing cannot be read'] : tooMany };
}

/** Most points of all copies of a design together: what a page draws in a moment. */
const MOST_POINTS = 200_000;

/** How many copies of lines with so many points are tooled at most; one always is. */
export const mostCopies = (points: number): number => Math.max(1, Math.floor(MOST_POINTS / Math.max(1, points)));

/** The lines of every copy, or of as many as there may be, and in words that they are not all. */
function copied(lines: readonly (readonly Vec2[])[], copies: readonly ((point: Vec2) => Vec2)[]) {
  const most = mostCopies(lines.reduce((sum, line) => sum + line.length, 0));
  const drawn = copies.slice(0, most).flatMap((place) => lines.map((line) => line.map(place)));
  const tooMany =
    copies.length > most ? [`${most} of its ${copies.length} copies are drawn, the most for so many points`] : [];
  return { lines: drawn, tooMany };
}

/** A design that is placed by its centre; a border follows its area. */
export type MovableDesign = Extract<ToolingDesign, { kind: 'title' | 'drawing' }>;

/** Where one copy of a title or drawing stands on the finished face. */
export interface DesignCopy {
  /** Its centre. */
  readonly at: Vec2;
  /** Degrees counterclockwise, that of a title's reading with it. */
  readonly turn: number;
  readonly mirrored: boolean;
}

/** The copies of a design, row by row from the upper left, about its place from where the centre lines cross. */
export function designCopies(design: MovableDesign, centre: Vec2): DesignCopy[] {
  const { x_mm, y_mm, turn_deg, mirrored, repeat } = design;
  const turn = turn_deg + (design.kind === 'title' ? READING[design.reading] : 0);
  const { columns, rows, stepX_mm, stepY_mm } = repeat;
  return Array.from({ length: columns * rows }, (_, i) => {
    const [column, row] = [i % columns, Math.floor(i / columns)];
    const x = centre[0] + x_mm + (column - (columns - 1) / 2) * stepX_mm;
    const y = centre[1] + y_mm - (row - (rows - 1) / 2) * stepY_mm;
    return { at: [x, y], turn, mirrored };
  });
}

/** A place of a design, from its centre before it is mirrored and turned, on the finished face. */
export function onCopy({ at, turn, mirrored }: DesignCopy): (point: Vec2) => Vec2 {
  const angle = (turn * Math.PI) / 180;
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  return ([u, v]) => {
    const across = mirrored ? -u : u;
    return [at[0] + cos * across - sin * v, at[1] + sin * across + cos * v];
  };
}

/** Turn of a line of text, degrees: down the spine its letters' heads are toward the front. */
const READING = { across: 0, down: -90, up: 90 } as const;

/** A title about the middle of its width and of its capitals. */
function titleLines({ text, face: id, height_mm }: Extract<ToolingDesign, { kind: 'title' }>, faces: LetterFaces) {
  const face = faceOf(faces, id);
  if (face === undefined) return { lines: [], lacking: ['its letters are not loaded'] };
  const { polylines, width } = face.outline(text);
  const lines = polylines.map((line) =>
    line.map(([x, y]): Vec2 => [(x - width / 2) * height_mm, (y - 0.5) * height_mm]),
  );
  const lacks = face.lacks(text);
  return { lines, lacking: lacks.length === 0 ? [] : [`${face.title} has no letter for ${lacks.join(' ')}`] };
}

/** Lines of a drawing in its grid; a job's drawing is decoded once, however often it is placed or edited. */
const artworkPoints = ({ lines }: Extract<Artwork, { kind: 'lines' }>): readonly (readonly Vec2[])[] =>
  cached(decoded, lines, KEPT, () => {
    const read = readArtworkLines(lines);
    return 'polylines' in read ? read.polylines : [];
  });

/** Drawings kept at once: a job has 12 at most. */
const KEPT = 24;
const decoded = new Map<string, readonly (readonly Vec2[])[]>();
