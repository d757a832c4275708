import type { WorkId } from '../job/orderSchema.ts';
import type { Vec3 } from '../math/vec3.ts';
import type { Mm } from '../units/mm.ts';
import type { Radians } from '../units/radians.ts';

/**
 * Steps of the film: those of the order of work that change what is seen once the leather is cut, and loading and closing one
 * by one.
 */
export type FilmId =
  | Exclude<WorkId, 'measure' | 'mockup' | 'case' | 'trace' | 'dry' | 'dye' | 'dress' | 'cement' | 'load'>
  | 'firstBoard'
  | 'secondBoard'
  | 'rest';

/** A figure of the model that a step is about. */
export type FilmFigure =
  | { readonly words: string; readonly unit: 'mm'; readonly value: Mm }
  | { readonly words: string; readonly unit: 'rad'; readonly value: Radians };

/** Where and by how much a step does not go. */
export interface FilmJam {
  /** Place on the film at which it stops; every later place shows this one. */
  readonly at: number;
  /** What is in the way, in one sentence without figures. */
  readonly words: string;
  /** What there is, and what the step takes. */
  readonly has: FilmFigure;
  readonly needs: FilmFigure;
}

/** One step of the film. */
export interface FilmStep {
  readonly id: FilmId;
  /** The step of the order of work that it shows. */
  readonly work: WorkId;
  readonly name: string;
  readonly cautions: readonly string[];
  /** Where it begins and ends on the film, 0 to 1; a step begins where the one before it ends. */
  readonly from: number;
  readonly to: number;
  readonly figure: FilmFigure | null;
  readonly jam: FilmJam | null;
}

/** A jam as it is seen: the spot in the scene, and the jam that it is. */
export interface SeenJam {
  readonly spot: Vec3;
  readonly jam: FilmJam;
}

/** How far each movement of the making has gone at a place on the film, 0 not begun to 1 done. */
export type Movements = Readonly<Record<Movement, number>>;

export type Movement =
  /** Holes or slits are there. */
  | 'punched'
  /** Edges bevelled, and later burnished or painted. */
  | 'bevelled'
  | 'burnished'
  /** Lining, then strap, loop and ribbon, then pockets (or turned ends folded over), from the bench to their place. */
  | 'tooled'
  | 'lined'
  | 'fitted'
  | 'joined'
  /** Share of the seam that thread or lace has run, corners included. */
  | 'sewn'
  /** First board from beside its pocket to home; both boards bent back; second board from its mouth to home, and both flat. */
  | 'firstIn'
  | 'bentBack'
  | 'secondIn'
  /** From open flat to the smallest opening; strap or flap round and fastened; from pressed to at rest. */
  | 'closed'
  | 'fastened'
  | 'rested';
