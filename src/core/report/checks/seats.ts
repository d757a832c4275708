import type { SeatStrip } from '../../fold/seatStrip.ts';
import { RANGE_POINTS } from '../../leather/leatherModel.ts';
import type { Check, CheckContext } from '../check.ts';

/**
 * Whether the seats that the allowances count on are reached by the elastic strip, creased and pressed by hand. Leather
 * that is not pressed needs more; the check advises, it does not fail a cover.
 */
export function seats({ elastic, design, say }: CheckContext): Check | null {
  if (elastic === undefined) return null;
  const found = RANGE_POINTS.flatMap((point) => {
    const { foreEdge, headTail } = elastic[point].seats;
    const { closedSlack, head, tail } = design.fits[point];
    return [at('fore-edge', foreEdge, closedSlack / 2), at('head and tail', headTail, Math.min(head, tail))];
  }).filter((each) => each !== null);
  const base = { id: 'seats', title: 'Seats at the seams', verdict: 'fits', unit: 'mm', change: [] } as const;
  const solved = found.filter(({ seat }) => seat.status === 'converged');
  if (solved.length < found.length || solved.length === 0) {
    const message = 'The elastic strip did not settle at every seam; the closed form stands alone there.';
    return { ...base, value: 0, limit: 0, bound: null, message, remedy: '' };
  }
  const tightest = solved.reduce((worst, each) => (each.gap - each.more < worst.gap - worst.more ? each : worst));
  const { edge, seat, more, gap } = tightest;
  const isReached = more <= gap;
  return {
    ...base,
    value: more,
    limit: Math.max(0, gap),
    bound: 'atMost',
    message:
      `Creased and pressed by hand, leather needs ${say.given(seat.needed)} from seam to board at the ${edge}, ` +
      `${say.given(Math.abs(more))} ${more >= 0 ? 'more' : 'less'} than the allowance counts on; ${say.gap(gap)} of ${gap >= 0 ? 'gap' : 'overrun'} is there.`,
    remedy: isReached ? '' : 'Case the leather and press the folds along the seam, or allow more ease there.',
  };
}

const at = (edge: string, seat: SeatStrip | null, gap: number) =>
  seat && { edge, seat, gap, more: seat.needed - seat.closed.needed };
