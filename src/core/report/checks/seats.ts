import type { SeatStrip } from '../../fold/elastic/seatStrip.ts';
import { RANGE_POINTS, type RangePoint } from '../../leather/leatherModel.ts';
import { casingCost } from '../casingCost.ts';
import type { Answer } from '../check.ts';
import type { StripContext } from '../stripContext.ts';
import { stripTrouble } from './stripTrouble.ts';

/**
 * Where the board edges come to rest by the elastic strip, creased and pressed by hand, beside the seats of the
 * allowances. Leather that is not pressed needs more. The row informs: the closed form judges the edges.
 */
export function seats(context: StripContext): Answer {
  const { elastic, design, say } = context;
  const found = RANGE_POINTS.flatMap((point) => {
    const { foreEdge, headTail } = elastic[point].seats;
    const { closedSlack, head, tail } = design.fits[point];
    return [
      at(point, 'fore-edge', foreEdge, closedSlack / 2),
      at(point, 'head and tail', headTail, Math.min(head, tail)),
    ];
  }).filter((each) => each !== null);
  const lost = found.find(({ seat }) => seat.status !== 'converged');
  if (lost || found.length === 0) {
    const trouble = lost ? ` (${lost.edge}: ${stripTrouble(context, lost.point, lost.seat)})` : '';
    return {
      verdict: 'unknown',
      message: `The springy model found no answer at every seam${trouble}; the quick model stands alone there.`,
    };
  }
  const tightest = found.reduce((worst, each) => (each.gap - each.more < worst.gap - worst.more ? each : worst));
  const { edge, seat, more, gap } = tightest;
  const by = say.length(Math.abs(more));
  const beside = Number.parseFloat(by) === 0 ? 'as much as' : `${by} ${more > 0 ? 'more' : 'less'} than`;
  return {
    verdict: 'none',
    message:
      `Creased and pressed by hand, this leather needs ${say.length(seat.needed)} from seam to board at the ${edge}, ` +
      `${beside} the pattern allows. ${say.gap(gap)} of ${gap >= 0 ? 'gap' : 'overrun'} is there.`,
    remedy:
      more <= gap
        ? ''
        : `Case the leather and press the folds along the seam, or allow more ease there.${casingCost(design, say)}`,
  };
}

const at = (point: RangePoint, edge: string, seat: SeatStrip | null, gap: number) =>
  seat && { point, edge, seat, gap, more: seat.needed - seat.closed.needed };
