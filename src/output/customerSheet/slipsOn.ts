import type { CoverDesign, Printer } from '../../core/index.ts';
import { leastOver, mostOver } from './leastOver.ts';
import { roomAtEachSide } from './roomPicture.ts';

/** Thickness of a sheet of office paper of 80 g/m2, mm; common practice, no source. */
const PAPER_SHEET = 0.1;

/** Step of a length that is told as "about", and from where on it is, mm: a nearer figure means nothing to a customer. */
const ABOUT = { mm: 0.5, in: 25.4 / 32 } as const;
const LEAST_ABOUT = 0.75;

/** How the cover goes on and what room it leaves, for someone who has no rule at hand; each room the least over the leather. */
export function slipsOn({ fits, job, ...design }: CoverDesign, say: Printer): readonly string[] {
  const sides = roomAtEachSide({ fits, job, ...design });
  const ends = leastOver((point) => Math.min(fits[point].head, fits[point].tail));
  const held = Math.max(
    0,
    leastOver((point) => fits[point].pocket.held),
  );
  return [
    sides < 0
      ? `As drawn, it is ${say.gap(sides)} too short at each side.`
      : `It slips on with ${about(sides, say)} to spare at each side${paper(sides, say)}.`,
    ends < 0
      ? `At the top and the bottom it is ${say.gap(ends)} too short.`
      : `At the top and the bottom there is ${about(ends, say)} to spare${paper(ends, say)}.`,
    `Each pocket holds ${say.gap(held)} of its board, ${say.share(held / job.book.width_mm)} of the width.`,
    goesOn(
      mostOver((point) => fits[point].pocket.loadingAngle),
      fits,
      say,
    ),
  ];
}

function goesOn(angle: number, fits: CoverDesign['fits'], say: Printer): string {
  const hasRoom = leastOver((point) => (fits[point].staysOpen === null ? 0 : 1)) === 1;
  if (!hasRoom) return 'The boards do not go into the pockets yet.';
  const loads = leastOver((point) => (fits[point].pocket.loads ? 1 : 0)) === 1;
  if (!loads)
    return `The second board would have to bend back ${say.angle(angle)} past flat, more than this book allows.`;
  return `To put it on, slip in one board, bend the boards back ${say.angle(angle)} past flat, and slip in the other.`;
}

/** A room in round figures, or as it is where round figures would say too much. */
function about(room: number, say: Printer): string {
  if (room < LEAST_ABOUT) return say.gap(room);
  const step = ABOUT[say.units];
  return `about ${say.size(Math.round(room / step) * step)}`;
}

/** The same in sheets of paper, never overstated. */
function paper(room: number, say: Printer): string {
  const count = Math.floor(room / PAPER_SHEET + 1e-9);
  return count === 0 ? ', less than a sheet of paper' : `, as much as ${say.count(count, 'sheet', 'sheets')} of paper`;
}
