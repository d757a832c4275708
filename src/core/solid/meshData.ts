import type { Movements, SeenJam } from '../film/filmStep.ts';
import type { Edge } from '../fold/edges.ts';
import type { LeatherName } from '../job/jobSchema.ts';
import type { Vec3 } from '../math/vec3.ts';
import type { ResultOrigin } from '../words/resultOrigin.ts';

/** Part of the assembled cover or book that a mesh shows. */
export type PartName =
  | 'outside'
  | 'frontPocket'
  | 'backPocket'
  | 'lining'
  | 'frontBoard'
  | 'backBoard'
  | 'frontJoint'
  | 'backJoint'
  | 'spine'
  | 'frontPages'
  | 'backPages'
  | 'leaves'
  | 'headBand'
  | 'tailBand'
  | 'strap'
  | 'fastening'
  | 'buckleTab'
  | 'penLoop'
  | 'ribbons';

const LEATHERS: Partial<Record<PartName, LeatherName>> = {
  frontPocket: 'pocket',
  backPocket: 'pocket',
  lining: 'lining',
};

/** The leather of a part of the cover; a part of the book has no leather faces, and the answer does not matter there. */
export const leatherOf = (part: PartName): LeatherName => LEATHERS[part] ?? 'outside';

/** What a run of triangles is made of; decides the material. */
export type Face =
  | 'grain'
  | 'flesh'
  | 'cutEdge'
  | 'boardCloth'
  | 'boardInside'
  | 'endpaper'
  | 'pageFace'
  | 'pageEdge'
  | 'band'
  | 'ribbon'
  | 'metal';

/** One closed solid, ready for a renderer or an exporter. Lengths in mm; outward faces run counterclockwise. */
export interface MeshData {
  readonly part: PartName;
  readonly positions: Float32Array;
  readonly normals: Float32Array;
  /** Two per vertex, in mm: the place on the flat pattern of leather, or on the face of another part. */
  readonly uvs: Float32Array;
  readonly indices: Uint32Array;
  /** Runs of `indices`, without gap or overlap. */
  readonly faces: readonly { readonly face: Face; readonly start: number; readonly count: number }[];
}

/** One hole of the seam on the folded cover, with the way to the next. */
export interface FoldedHole {
  readonly at: Vec3;
  /** Unit vector along the seam toward the next hole. */
  readonly along: Vec3;
  /** Unit vector out of the grain side. */
  readonly out: Vec3;
  /** Unit vector from the seam line toward the cut edge. */
  readonly edgeward: Vec3;
  /** Distance to the next hole, mm. */
  readonly pitch: number;
  /** Thickness of the stack that the thread goes through here, mm. */
  readonly stack: number;
  /** The grain side halfway to the next hole; absent at the end of an open row. */
  readonly halfway?: Pick<FoldedHole, 'at' | 'out'>;
}

/**
 * The surface along an edge of a board, at the board's outer face: on the inner face of the leather, or on the board itself
 * where the book does not go in. Rungs run across the edge, away from the board.
 */
export interface EdgeBand {
  /**
   * Where the points of each rung lie, mm from the board's edge, rising: from a little over the board to a little beyond
   * seam or stop. The edge (0) and the stop (`value`) are among them.
   */
  readonly across: readonly number[];
  /** Seam line, mm from the board's edge on the flat leather; null on a board. */
  readonly seam: number | null;
  /** From tail to head, or from the fore-edge to the mouth of the pocket. */
  readonly rungs: readonly (readonly Vec3[])[];
  /** Share of the edge at the first and the last rung: 0 at the tail or the spine, 1 at the head or the fore-edge. */
  readonly span: readonly [from: number, to: number];
  /** Thickness of the board, mm. */
  readonly board: number;
}

/**
 * A gap or overrun where it is: a dimension mark from the board's edge (`from`) to its stop, where the edge comes to rest
 * (`to`), and the band of surface that both lie on. Head and tail are marked on both boards, the front one first, so that
 * either side of the book shows them.
 */
export interface FitMark {
  readonly edge: Edge | 'spine' | 'frontBoard' | 'backBoard' | 'gape';
  /** Gap positive, overrun negative, mm. */
  readonly value: number;
  /** Where the spare wrap is in this picture, for a gap at a fore-edge: that gap is a range between the two. Null elsewhere. */
  readonly spare: 'pushedHome' | 'asItLies' | null;
  /** Whether this gap is over the loosest one. */
  readonly isLoose: boolean;
  readonly from: Vec3;
  readonly to: Vec3;
  /** Direction from which the mark is seen: out of the surface that it lies on, unit vector. */
  readonly out: Vec3;
  /** Null for what is not measured at an edge of a board. */
  readonly band: EdgeBand | null;
}

/** A box in the uv of a mesh, mm. */
export interface PatternBox {
  readonly s: readonly [from: number, to: number];
  readonly v: readonly [from: number, to: number];
}

/**
 * A face of leather to be drawn translucent along the edges of a board, so that board, gap and seat show through it. Seen
 * from the other side the sheet stays as it is.
 */
export interface SeeThrough {
  readonly part: PartName;
  readonly face: Face;
  /** Each frame lies between two boxes: seam lines outside, a little over the board inside. It is open toward the spine. */
  readonly frames: readonly { readonly outer: PatternBox; readonly inner: PatternBox }[];
}

/** How far a cover is made, as it is seen. */
export interface CoverFilm {
  readonly movements: Movements;
  /** Where the making has come to a stop; null where it goes on. */
  readonly jam: SeenJam | null;
}

/** Everything that the scene shows for one position of book and cover. */
export interface FoldedCover {
  /** Of its shape: drawn tight by the quick model, or as it lies by the springy model; tight too where that is not known. */
  readonly origin: ResultOrigin;
  readonly parts: readonly MeshData[];
  readonly seam: readonly FoldedHole[];
  /** Holes of the own seams of a closure strap and the tab of its buckle, on their grain side; empty without a strap. */
  readonly strapSeam: readonly FoldedHole[];
  readonly marks: readonly FitMark[];
  /** Empty while there is no gap to be seen through leather. */
  readonly seeThrough: readonly SeeThrough[];
  /** Turn about the spine axis (+z, through the origin) that lays the back board flat on the bench, radians. */
  readonly benchTurn: number;
  /** Opening that is shown, radians; may be larger than asked where the cover does not close that far. */
  readonly opening: number;
  /** What the film shows of the making here; a cover that is opened or closed is finished. */
  readonly film: CoverFilm;
  /** How far the book has come into view in the sequence, 0 absent to 1: for a fade. The parts leave it out at 0. */
  readonly bookPresence?: number;
}
