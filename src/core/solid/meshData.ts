import type { LeatherName } from '../job/jobSchema.ts';
import type { Vec3 } from '../math/vec3.ts';

/** Part of the assembled cover or book that a mesh shows. */
export type PartName =
  | 'outside'
  | 'frontPocket'
  | 'backPocket'
  | 'lining'
  | 'frontBoard'
  | 'backBoard'
  | 'spine'
  | 'frontPages'
  | 'backPages'
  | 'headBand'
  | 'tailBand';

const LEATHERS: Partial<Record<PartName, LeatherName>> = {
  frontPocket: 'pocket',
  backPocket: 'pocket',
  lining: 'lining',
};

/** The leather of a part of the cover; a part of the book has no leather faces, and the answer does not matter there. */
export const leatherOf = (part: PartName): LeatherName => LEATHERS[part] ?? 'outside';

/** What a run of triangles is made of; decides the material. */
export type Face = 'grain' | 'flesh' | 'cutEdge' | 'boardCloth' | 'boardInside' | 'pageFace' | 'pageEdge' | 'band';

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
}

/**
 * A gap or overrun where it is: a dimension mark from `from` to `to`, and the strip of surface to hatch. Head and tail are
 * marked on both boards, the front one first, so that either side of the book shows them.
 */
export interface FitMark {
  readonly edge: 'frontForeEdge' | 'backForeEdge' | 'head' | 'tail' | 'spine' | 'frontBoard' | 'backBoard' | 'gape';
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
  /** Rungs of the hatched strip: from the board's edge to where it would seat; empty where there is nothing to hatch. */
  readonly hatch: readonly (readonly [Vec3, Vec3])[];
}

/** Everything that the scene shows for one position of book and cover. */
export interface FoldedCover {
  readonly parts: readonly MeshData[];
  readonly seam: readonly FoldedHole[];
  readonly marks: readonly FitMark[];
  /** Turn about the spine axis (+z, through the origin) that lays the back board flat on the bench, radians. */
  readonly benchTurn: number;
  /** Opening that is shown, radians; may be larger than asked where the cover does not close that far. */
  readonly opening: number;
  /** How far the book has come into view in the sequence, 0 absent to 1: for a fade. The parts leave it out at 0. */
  readonly bookPresence?: number;
}
