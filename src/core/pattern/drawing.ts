import type { Artwork, ToolingFace } from '../job/toolingSchema.ts';
import type { TestStrip } from '../leatherTest/testStrip.ts';
import type { Contour, Segment } from '../math/contour.ts';
import type { Vec2 } from '../math/vec2.ts';
import type { LengthUnit } from '../units/parseLength.ts';

/** What a mark on a pattern means. Each is a layer of its own in every file. */
export const LAYERS = [
  'cut',
  'fold',
  'seam',
  'hole',
  'skive',
  'book',
  'centre',
  'area',
  'tooling',
  'direction',
  'mouth',
  'lining',
  'mark',
  'text',
] as const;
export type Layer = (typeof LAYERS)[number];

/** Lines and arcs that follow on from one another. */
export interface Path {
  readonly kind: 'path';
  readonly segments: Contour;
  readonly isClosed: boolean;
}

export interface Text {
  readonly kind: 'text';
  /** On the base line. */
  readonly at: Vec2;
  /** Height of the letters' body, mm. */
  readonly height: number;
  /** Radians counterclockwise. */
  readonly rotation: number;
  readonly align: 'start' | 'middle';
  /** Left and right end of the block of rows that the text belongs to, mm: a mirrored piece moves the block as one. */
  readonly block?: readonly [number, number];
  /** Layer whose marks the text names: the text is left out with them. */
  readonly names?: Layer;
  readonly text: string;
}

/** An area filled with parallel lines. */
export interface Hatch {
  readonly kind: 'hatch';
  readonly boundary: readonly Vec2[];
  /** Of the lines to the x axis, radians. */
  readonly angle: number;
  /** Between the lines, mm. */
  readonly spacing: number;
}

/** A picture of the maker's own, laid as it is; mm. */
export interface Picture {
  readonly kind: 'picture';
  readonly artwork: Extract<Artwork, { kind: 'picture' }>;
  /** Its top left corner. */
  readonly origin: Vec2;
  /** Along its top edge, and down its left edge. */
  readonly along: Vec2;
  readonly down: Vec2;
}

export type Entity = Segment | Path | Text | Hatch | Picture;

export interface CutPart {
  readonly name: string;
  readonly times: 1 | 2;
  readonly each: number;
  /** A measure or setting of the job, not a computed length. */
  readonly isGiven?: boolean;
  /** The difference to the total: rounding, or what a size given by the maker adds. */
  readonly isRest?: boolean;
}

/** A dimension of a piece and the lengths it is the sum of, mm. */
export interface CutSum {
  readonly dimension: 'width' | 'height' | 'length';
  readonly total: number;
  readonly parts: readonly CutPart[];
}

/** The pattern pieces by id, with the names that each may have. */
const PIECES = {
  outside: ['Outside', 'One card'],
  half: ['Half card'],
  pocket: ['Pocket', 'Front pocket'],
  backPocket: ['Back pocket'],
  lining: ['Full lining', 'Centre lining'],
  strap: ['Closure strap', 'Closure flap'],
  buckleTab: ['Buckle tab'],
  penLoop: ['Pen loop'],
} as const;
type TracingId = `${ToolingFace}Tracing`;
/** A strip of the holes of a side, for pricking: a help, no part of the cover. */
type StripId = 'tailStrip' | 'backForeEdgeStrip' | 'headStrip' | 'frontForeEdgeStrip';
/** A strip of leather that is tested, no part of a cover. */
type TestStripId = `testStrip${TestStrip['letter']}`;
export type PieceId = keyof typeof PIECES | TracingId | StripId | TestStripId;
type PieceName =
  | (typeof PIECES)[keyof typeof PIECES][number]
  | `${string} tracing`
  | `Hole strip, ${string}`
  | `Strip ${TestStrip['letter']}`;

/** The sheet that the tooling of a face is traced from: it is laid on the piece, not cut. */
export const tracingId = (face: ToolingFace): TracingId => `${face}Tracing`;

/** What is tooled on a piece as it is cut: the clear part of each face with its centre lines, and the lines of the designs. */
export type PieceTooling = Readonly<Record<'area' | 'tooling', readonly Entity[]>>;

/** What is tooled on each piece that is. */
export type ToolingMarks = Partial<Readonly<Record<PieceId, PieceTooling>>>;

/** One pattern piece: grain side up, head at the top, lower left corner of its box at the origin. Lengths in mm. */
export interface PieceDrawing {
  readonly id: PieceId;
  readonly name: PieceName;
  /** How often it is cut. */
  readonly count: number;
  readonly width: number;
  readonly height: number;
  /** The cut edge, closed and counterclockwise. */
  readonly outline: Contour;
  readonly layers: Readonly<Record<Layer, readonly Entity[]>>;
  readonly sums: readonly CutSum[];
  /** Holes or slits in one such piece. */
  readonly holes: number;
  /** Words that found no room on the piece and must be printed elsewhere. */
  readonly unwritten: readonly string[];
}

/** A length that is cut from the reel and has no pattern piece. */
export interface CutLength {
  readonly name: string;
  readonly count: number;
  readonly sum: CutSum;
}

/** Whether a piece is laid on another and traced, and not cut. */
export const isTracing = ({ id }: Pick<PieceDrawing, 'id'>): boolean => id.endsWith('Tracing');

/** Whether it is a strip of holes, which is laid on the leather's edge. */
export const isStrip = ({ id }: Pick<PieceDrawing, 'id'>): boolean => id.endsWith('Strip');

/** Whether it is cut from a hide for a test. */
export const isTestStrip = ({ id }: Pick<PieceDrawing, 'id'>): boolean => id.startsWith('testStrip');

/** `Pocket, cut 2`; `Front tracing`. */
export const pieceWords = (piece: Pick<PieceDrawing, 'id' | 'name' | 'count'>): string =>
  isTracing(piece) || isStrip(piece) ? piece.name : `${piece.name}, cut ${piece.count}`;

/** The whole pattern as plain data. One Drawing feeds the screen and every file. */
export interface Drawing {
  readonly title: string;
  /** Unit of the lengths written on it; coordinates are in mm. */
  readonly units: LengthUnit;
  /** Which face of every piece is seen, such as `grain side up`. */
  readonly faceUp: string;
  readonly pieces: readonly PieceDrawing[];
  readonly lengths: readonly CutLength[];
  /** Holes through the whole cover, each counted once. */
  readonly holes: number;
  /** What the maker must know before cutting. */
  readonly notes: readonly string[];
}

/** The entities of one layer of a piece where only the chosen layers are drawn: words that name marks go with them. */
export const seenOf = ({ layers }: PieceDrawing, layer: Layer, chosen: readonly Layer[]): readonly Entity[] =>
  chosen.includes(layer)
    ? layers[layer].filter((entity) => entity.kind !== 'text' || chosen.includes(entity.names ?? layer))
    : [];

export const noLayers = (tooling?: PieceTooling): Record<Layer, Entity[]> => ({
  ...(Object.fromEntries(LAYERS.map((layer) => [layer, [] as Entity[]])) as Record<Layer, Entity[]>),
  ...(tooling && { area: [...tooling.area], tooling: [...tooling.tooling] }),
});

/** The four edges of a picture, as a closed line. */
export function pictureFrame({ origin, along, down }: Omit<Picture, 'kind' | 'artwork'>): Vec2[] {
  const at = (a: number, d: number): Vec2 => [
    origin[0] + a * along[0] + d * down[0],
    origin[1] + a * along[1] + d * down[1],
  ];
  return [at(0, 0), at(1, 0), at(1, 1), at(0, 1), at(0, 0)];
}

export const line = (from: Vec2, to: Vec2): Segment => ({ kind: 'line', from, to });

export const path = (segments: Contour, isClosed: boolean): Path => ({ kind: 'path', segments, isClosed });
