import type { CoverSupplies, Job, Printer } from '../../core/index.ts';
import { type Block, heading, item, text } from './block.ts';

const NAMES = { outside: 'Outside leather', pocket: 'Pocket leather', lining: 'Lining leather' } as const;

const lengthsOf = (count: number, what: string, each: string): string =>
  count === 1 ? `Cut one length of ${what}, ${each}.` : `Cut ${count} lengths of ${what}, ${each} each.`;

/** Leather, thread or lace, cement, ribbon and fastening, each with its parts. */
export function supplySection(supplies: CoverSupplies, rules: Job['supplies'], say: Printer): Block[] {
  const { areas, outlines, thread, lace, strap, ribbon, fastenings, cement } = supplies;
  const sewnOn = strap > 0 ? [text(`${say.reel(strap)} of it to sew the strap on, tails included.`)] : [];
  const blocks = [heading('Supplies')];
  for (const { leather, net, gross } of areas) {
    const pieces = outlines
      .filter((outline) => outline.leather === leather)
      .map(({ name, count }) => (count === 1 ? name.toLowerCase() : `${count} ${name.toLowerCase()}s`));
    blocks.push(
      item(NAMES[leather], say.area(gross)),
      text(`${say.area(net)} in the pieces (${pieces.join(', ')}), and ${say.share(rules.waste)} for waste.`),
    );
  }
  if (thread !== null)
    blocks.push(
      item('Thread', say.reel(thread.total + strap)),
      text(
        `${lengthsOf(thread.threads, 'thread', say.reel(thread.longest))} ${say.reel(thread.stitches)} in the stitches, ${say.number(thread.multiple, 2)} times ` +
          `the seam of ${say.reel(thread.seam)}; ${say.reel(thread.tails)} in tails, ${say.reel(thread.backStitches)} in back stitches.`,
      ),
      ...sewnOn,
    );
  if (lace !== null)
    blocks.push(
      item('Lace', say.reel(lace.total + strap)),
      text(
        `${lengthsOf(lace.laces, 'lace', say.reel(lace.each))} ${say.reel(lace.turns)} in the turns, ${say.number(lace.multiple, 1)} times the seam of ` +
          `${say.reel(lace.seam)} (rule of thumb ${lace.trade.low} to ${lace.trade.high}). ${say.reel(lace.corners)} at the corners, ` +
          `${say.reel(lace.tails + lace.splices)} in tails and splices.`,
      ),
      ...sewnOn,
    );
  if (cement > 0)
    blocks.push(
      item('Contact cement', say.area(cement)),
      text(`A band of ${say.size(rules.cementBand_mm)} along the cut edge, on both faces of every joint.`),
      text('Read its safety data sheet before you open it; the local rules hold too.'),
    );
  if (ribbon !== null)
    blocks.push(
      item('Ribbon', say.reel(ribbon.count * ribbon.sum.total)),
      text(`Cut ${ribbon.count} of ${say.size(ribbon.sum.total)}.`),
    );
  if (fastenings > 0)
    blocks.push(item('Fastening', String(fastenings)), text('For the closure strap: a stud, a snap or a buckle.'));
  return blocks;
}
