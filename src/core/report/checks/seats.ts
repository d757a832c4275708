import type { SeatStrip } from '../../fold/elastic/seatStrip.ts';
import { RANGE_POINTS } from '../../leather/leatherModel.ts';
import { casingCost } from '../casingCost.ts';
import type { Answer } from '../check.ts';
import type { StripContext } from '../stripContext.ts';

/**
 * Where the board edges come to rest by the elastic strip, creased and pressed by hand, beside the seats of the
 * allowances. Leather that is not pressed needs more. The row informs: the closed form judges the edges.
 */
export function seats({ elastic, design, say }: StripContext): Answer {
  const found = RANGE_POINTS.flatMap((point) => {
    const { foreEdge, headTail } = elastic[point].seats;
    const { closedSlack, head, tail } = design.fits[point];
    return [at('fore-edge', foreEdge, closedSlack / 2), at('head and tail', headTail, Math.min(head, tail))];
  }).filter((each) => each !== null);
  const solved = found.filter(({ seat }) => seat.status === 'converged');
  if (solved.length < found.length || solved.length === 0)
    return {
      verdict: 'unknown',
      message: 'The springy model found no answer at every seam; the quick model stands alone there.',
    };
  const tightest = solved.reduce((worst, each) => (each.gap - each.more < worst.gap - worst.more ? each : worst));
  const { edge, seat, more, gap } = tightest;
  const by = say.length(Math.abs(more));
  const beside = Number.parseFloat(by) === 0 ? 'as much as' : `${by} ${more > 0 ? 'more' : 'less'} than`;
  return {
    verdict: 'none',
    message:
      `Creased and pressed by hand, this leather needs ${say.length(seat.needed)} from seam to board at the ${edge}, ` +
      `${beside} the pattern allows; ${say.gap(gap)} of ${gap >= 0 ? 'gap' : 'overrun'} is there.`,
    remedy:
      more <= gap
        ? ''
        : `Case the leather and press the folds along the seam, or allow more ease there.${casingCost(design, say)}`,
  };
}

const at = (edge: string, seat: SeatStrip | null, gap: number) =>
  seat && { edge, seat, gap, more: seat.needed - seat.closed.needed };
