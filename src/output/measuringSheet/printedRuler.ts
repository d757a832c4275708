import { line, MM_PER_INCH, type Segment } from '../../core/index.ts';

/** A ruler as lines and figures, from its zero at the origin to the right, mm. */
export interface PrintedRuler {
  readonly ticks: readonly Segment[];
  readonly figures: readonly { readonly text: string; readonly at: number }[];
  readonly length: number;
}

/** Height of the ticks, mm, by what they stand for: number, half, the rest. */
const TICK = { whole: 6, half: 4, small: 2.5 } as const;

/** A ruler of whole centimetres or inches that is at most `room` mm long. */
export function printedRuler(units: 'mm' | 'in', room: number): PrintedRuler {
  const [unit, parts] = units === 'mm' ? [10, 10] : [MM_PER_INCH, 16];
  const count = Math.floor(room / unit);
  const ticks = Array.from({ length: count * parts + 1 }, (_, i) => {
    const height = i % parts === 0 ? TICK.whole : i % (parts / 2) === 0 ? TICK.half : TICK.small;
    const at = (i * unit) / parts;
    return line([at, 0], [at, height]);
  });
  return {
    ticks: [line([0, 0], [count * unit, 0]), ...ticks],
    figures: Array.from({ length: count + 1 }, (_, i) => ({
      text: String(units === 'mm' ? 10 * i : i),
      at: i * unit,
    })),
    length: count * unit,
  };
}
