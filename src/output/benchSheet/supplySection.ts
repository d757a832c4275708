import type { Job } from '../../core/job/jobSchema.ts';
import type { CoverSupplies } from '../../core/materials/coverSupplies.ts';
import type { Phrase } from '../../core/report/phrase.ts';
import { type Block, heading, item, text } from './block.ts';

/** Square millimetres in a square foot, (12 x 25.4)^2. */
const MM2_PER_SQUARE_FOOT = 92_903.04;

/** An area as leather is sold: in dm2 and in square feet. */
export const areaText = (mm2: number): string =>
  `${(mm2 / 10_000).toFixed(1)} dm² (${(mm2 / MM2_PER_SQUARE_FOOT).toFixed(2)} sq ft)`;

/** Millimetres in a yard, exact. */
const MM_PER_YARD = 914.4;

/** A length as thread and lace are sold: in metres and in yards. */
const reelText = (mm: number): string => `${(mm / 1000).toFixed(2)} m (${(mm / MM_PER_YARD).toFixed(1)} yd)`;

const metres = (mm: number): string => `${(mm / 1000).toFixed(2)} m`;

const NAMES = { outside: 'Outside leather', pocket: 'Pocket leather', lining: 'Lining leather' } as const;

/** Leather, thread or lace, and cement, each with what it is made up of. */
export function supplySection(supplies: CoverSupplies, rules: Job['supplies'], say: Phrase): Block[] {
  const { areas, thread, lace, strap, cement } = supplies;
  const sewnOn = strap > 0 ? [text(`${metres(strap)} of it to sew the strap on, tails included.`)] : [];
  const blocks = [heading('Supplies')];
  for (const { leather, net, gross } of areas)
    blocks.push(
      item(NAMES[leather], areaText(gross)),
      text(`${areaText(net)} in the pieces, and ${(100 * rules.waste).toFixed(0)} % for waste.`),
    );
  if (thread !== null)
    blocks.push(
      item('Thread', reelText(thread.total + strap)),
      text(
        `Cut ${thread.threads} of ${say.cut(Math.ceil(thread.longest))}. ${metres(thread.stitches)} in the stitches, ${thread.multiple.toFixed(2)} times ` +
          `the seam of ${metres(thread.seam)}; ${metres(thread.tails)} in tails, ${metres(thread.backStitches)} in back stitches.`,
      ),
      ...sewnOn,
    );
  if (lace !== null)
    blocks.push(
      item('Lace', reelText(lace.total + strap)),
      text(
        `Cut ${lace.laces} of ${say.cut(Math.ceil(lace.each))}. ${metres(lace.turns)} in the turns, ${lace.multiple.toFixed(1)} times the seam of ` +
          `${metres(lace.seam)} (rule of thumb ${lace.trade.low} to ${lace.trade.high}); ${metres(lace.corners)} at the corners, ` +
          `${metres(lace.tails + lace.splices)} in tails and splices.`,
      ),
      ...sewnOn,
    );
  if (cement > 0)
    blocks.push(
      item('Contact cement', areaText(cement)),
      text(`A band of ${say.given(rules.cementBand_mm)} along the cut edge, on both faces of every joint.`),
      text('Read its safety data sheet before you open it; the local rules hold too.'),
    );
  return blocks;
}
