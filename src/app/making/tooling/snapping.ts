import { type Box2, type LengthUnit, MM_PER_INCH, type ToolingArea, type Vec2 } from '../../../core/index.ts';

/** What a drag and an arrow key move a design by, mm: what a ruler shows. */
export const MOVE_STEP: Readonly<Record<LengthUnit, number>> = { mm: 1, in: MM_PER_INCH / 32 };

/** Arrow keys with Shift move so many steps. */
export const LEAP = 10;

interface Range {
  readonly min: number;
  readonly max: number;
}

/** A value within what is allowed, without the noise of its sum. */
export const inRange = (value: number, { min, max }: Range): number =>
  Number(Math.min(max, Math.max(min, value)).toFixed(6));

/** A value on the next whole step, within what is allowed. */
export const onStep = (value: number, step: number, range: Range): number =>
  inRange(Math.round(value / step) * step, range);

/** What one side of a design has come to. */
type SnapLine = 'centre' | 'low' | 'high';

interface Snap {
  readonly value: number;
  readonly line: SnapLine | null;
}

/** A place that a design is drawn to, from the centre lines, mm, and the lines that it has come to. */
export interface Snapped {
  readonly place: Vec2;
  readonly lines: readonly [across: SnapLine | null, along: SnapLine | null];
}

/**
 * Draws a design to a line near it: its middle to the centre line, or an edge to that of the clear part; the nearest counts,
 * the centre line before an edge. Far from all of them it moves by whole steps.
 * @param place of the design from the centre lines, mm
 * @param reach of the design from its place
 * @param within how near it is drawn, mm
 */
export function snapped(
  place: Vec2,
  reach: Box2,
  { clear, centre }: Pick<ToolingArea, 'clear' | 'centre'>,
  { within, step, range }: { readonly within: number; readonly step: number; readonly range: Range },
): Snapped {
  const along = (axis: 0 | 1): Snap => {
    const name = axis === 0 ? 'x' : 'y';
    const [low, high] = reach[name];
    const lines: readonly Snap[] = [
      // The middle of all copies, which a title's descenders or the repeats do not shift.
      { value: 0, line: 'centre' },
      ...(clear === null
        ? []
        : [
            { value: clear[name][0] - centre[axis] - low, line: 'low' as const },
            { value: clear[name][1] - centre[axis] - high, line: 'high' as const },
          ]),
    ];
    const away = ({ value }: Snap): number => Math.abs(value - place[axis]);
    const nearest = lines.reduce((best, next) => (away(next) < away(best) - 1e-9 ? next : best));
    return away(nearest) <= within
      ? { ...nearest, value: Number(nearest.value.toFixed(6)) }
      : { value: onStep(place[axis], step, range), line: null };
  };
  const [x, y] = [along(0), along(1)];
  return { place: [x.value, y.value], lines: [x.line, y.line] };
}

/** Degrees near which a turned design is drawn to an eighth of a circle. */
const NEAR_EIGHTH = 3;

/** A turn in whole degrees from -180, excluded, to 180; near an eighth of a circle that. */
export function snappedTurn(degrees: number): number {
  const eighth = Math.round(degrees / 45) * 45;
  const turn = Math.abs(degrees - eighth) <= NEAR_EIGHTH ? eighth : Math.round(degrees);
  const within = ((turn % 360) + 360) % 360 || 0;
  return within > 180 ? within - 360 : within;
}
