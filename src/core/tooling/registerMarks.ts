import { type Contour, circle, type Segment, segmentEnd, segmentStart } from '../math/contour.ts';
import type { Vec2 } from '../math/vec2.ts';
import { line } from '../pattern/drawing.ts';
import { MM_PER_INCH } from '../units/mm.ts';
import type { LengthUnit } from '../units/parseLength.ts';

/** Steps that register marks stand off an end of the piece by, mm: whole ones of any rule. */
const STEP: Readonly<Record<LengthUnit, number>> = { mm: 10, in: MM_PER_INCH / 2 };

/** What is drawn nearer to an end of its piece than this is traced with that end and its corners, mm. */
const NEAR_END = 40;

/** Radius of the ring of a register mark, and half the length of its cross, mm. */
export const REGISTER = { ring: 1.5, cross: 4 } as const;

/** Upright line of a piece on which two register marks stand, at its tail and at its head. */
export interface RegisterLine {
  /** Distance from an end of the piece, 0 for its corners, mm. */
  readonly at: number;
  readonly from: 'left' | 'right';
  /** From the left end. */
  readonly x: number;
  /** Whether the tracing goes on to the end of the piece that it is at. */
  readonly reachesEnd: boolean;
}

/**
 * The two lines of register marks for what is drawn from one x of a piece to another. Each stands at a corner of the piece, or
 * a whole step of a rule from its nearer end, beyond what is drawn where that end is far.
 * @param outline cut edge of the piece, straight at head and tail but for its corners
 */
export function registerLines(
  outline: Contour,
  { width, height }: { readonly width: number; readonly height: number },
  drawn: readonly [from: number, to: number],
  units: LengthUnit,
): readonly [RegisterLine, RegisterLine] {
  const step = STEP[units];
  const ends = outline
    .flatMap((segment) => [segmentStart(segment), segmentEnd(segment)])
    .filter(([, y]) => y < ON_EDGE || y > height - ON_EDGE);
  /** Where head and tail are straight, from the end at the left or at the right. */
  const straight = (from: 'left' | 'right'): number =>
    Math.max(0, Math.min(...ends.map(([x]) => (from === 'left' ? x : width - x))));
  const lineAt = (side: 'left' | 'right', distance: number): RegisterLine => {
    const reachesEnd = distance < NEAR_END;
    const isNear = distance <= width / 2;
    const other = side === 'left' ? 'right' : 'left';
    const from = isNear ? side : other;
    const beyond = isNear ? Math.floor(distance / step) : Math.ceil((width - distance) / step);
    const at = step * (reachesEnd ? Math.ceil(straight(from) / step - 1e-9) : beyond);
    return { at, from, x: from === 'left' ? at : width - at, reachesEnd };
  };
  return [lineAt('left', drawn[0]), lineAt('right', width - drawn[1])];
}

/** A point is on the head or tail edge within this, mm. */
const ON_EDGE = 1e-6;

/** A ring with a cross through its middle. */
export function registerMark([x, y]: Vec2): Segment[] {
  const { ring, cross } = REGISTER;
  return [circle([x, y], ring), line([x - cross, y], [x + cross, y]), line([x, y - cross], [x, y + cross])];
}
