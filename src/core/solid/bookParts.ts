import { symmetricOpening } from '../book/bookOutline.ts';
import type { CoverDesign } from '../fold/coverDesign.ts';
import type { RangePoint } from '../leather/leatherModel.ts';
import { bookMeshes } from './bookMeshes.ts';
import { moved } from './gridSolid.ts';
import type { MeshData } from './meshData.ts';
import type { Staging } from './staging.ts';
import type { Standing } from './standing.ts';

/** How the leaves stand: swung with their boards, and the opening that the pockets force on a thin book, radians. */
export interface Leaves {
  readonly leafSwing: number;
  readonly forced: number;
}

const STILL: Leaves = { leafSwing: 0, forced: 0 };

/**
 * The book of one pose, and how far it hovers over its place, mm along +x.
 * @param leaves null where the book does not go into the cover
 */
export function bookParts(
  design: CoverDesign,
  point: RangePoint,
  stage: Staging,
  standing: Standing,
  leaves: Leaves | null,
): { readonly parts: MeshData[]; readonly lift: number } {
  const { leafSwing, forced } = leaves ?? STILL;
  const lift = bookLift(design, point, stage, standing, leaves !== null);
  const parts = bookMeshes(design, point, {
    opening: symmetricOpening(standing.opening),
    leaves: { front: leafSwing + forced / 2, back: leafSwing + forced / 2 },
    forced,
    mouths: { front: standing.frontMouth, back: standing.backMouth },
  });
  return { parts: parts.map((part) => moved(part, lift, 0, 0)), lift };
}

/** Room over the pockets at which the book comes into view, and least hover of a book that does not go in, mm. */
const OVERHEAD = 20;
/** Lean of the open pockets past which a board that overruns must stay, as rise over run: tan of 80 degrees. */
const STEEP = Math.tan((80 * Math.PI) / 180);

function bookLift(
  { pieces, needs }: CoverDesign,
  point: RangePoint,
  stage: Staging,
  standing: Standing,
  goesIn: boolean,
): number {
  const { book, leathers } = needs[point];
  const above = pieces.pocketDepth + book.rise + leathers.pocket.thickness + OVERHEAD;
  // Boards that lie sloping are clear by less than the book is high above them.
  const start = above / Math.max(0.3, Math.sin(standing.direction));
  if (goesIn) return start * (1 - stage.letDown);
  const overrun = book.width + book.thickness / 2 - standing.front.toSeam;
  const bend = 2 * leathers.pocket.thickness + leathers.pocket.seatRadius;
  const stop = Math.min(above, Math.max(0, overrun + bend) * STEEP + OVERHEAD + book.rise);
  return stop + (start - stop) * (1 - stage.letDown);
}
