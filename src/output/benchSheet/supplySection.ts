import {
  type CoverSupplies,
  capital,
  colourWords,
  holeNoun,
  holeShape,
  type Job,
  type Printer,
} from '../../core/index.ts';
import { type Block, heading, item, text } from './block.ts';

const NAMES = { outside: 'Outside leather', pocket: 'Pocket leather', lining: 'Lining leather' } as const;

const SURFACES = { matt: 'Matt.', satin: 'Satin.', glossy: 'Glossy.' } as const;

/** What is done to the cut edges. */
const HOW: Readonly<Record<Job['finish']['edge'], string>> = {
  raw: 'They are left raw: nothing to buy.',
  burnished: 'They are bevelled and burnished: water or burnishing gum, and a slicker.',
  painted: 'They are bevelled, sanded and painted.',
};

/** A colour as the picture shows it; the dye is the maker's. */
const pictured = (colour: string): string => `Pictured ${colourWords(colour)}, ${colour}.`;

const lengthsOf = (count: number, what: string, each: string): string =>
  count === 1 ? `Cut one length of ${what}, ${each}.` : `Cut ${count} lengths of ${what}, ${each} each.`;

/** Which of the maker's leathers it is. */
const takenWords = ({ leather }: Job, piece: keyof typeof NAMES): Block[] => {
  const taken = leather[piece]?.taken ?? null;
  return taken === null ? [] : [text(`From your leathers: ${taken.name}.`)];
};

/** Leather, thread or lace, cement, ribbon, fastening and what the cut edges take, each with its parts and its colour. */
export function supplySection(supplies: CoverSupplies, job: Job, say: Printer): Block[] {
  const { areas, outlines, thread, lace, strap, ribbon, fastening, edges, cement } = supplies;
  const { supplies: rules, finish, construction } = job;
  const closure = `${construction.strap?.shape}${construction.strap?.fastening === 'buckle' ? ' and the buckle tab' : ''}`;
  const sewnOn = strap > 0 ? [text(`${say.reel(strap)} of it to sew the ${closure} on, tails included.`)] : [];
  const blocks = [heading('Supplies')];
  for (const { leather, net, gross } of areas) {
    const skin = finish[leather] ?? finish.outside;
    const pieces = outlines
      .filter((outline) => outline.leather === leather)
      .map(({ name, count }) => (count === 1 ? name.toLowerCase() : `${count} ${name.toLowerCase()}s`));
    blocks.push(
      item(NAMES[leather], say.area(gross)),
      text(`${say.area(net)} in the pieces (${pieces.join(', ')}), and ${say.share(rules.waste)} for waste.`),
      text(`${pictured(skin.colour)} ${SURFACES[skin.surface]}`),
      ...takenWords(job, leather),
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
      text(`${say.size(finish.thread_mm)} thick. ${pictured(finish.thread)}`),
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
      text(
        `Of the width of the ${holeNoun(job)}, ${say.size(holeShape(job).size)}, and ${say.size(rules.laceThickness_mm)} thick. ${pictured(finish.lace)}`,
      ),
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
      text(`Cut ${ribbon.count} of ${say.size(ribbon.sum.total)}. ${pictured(finish.ribbon)}`),
    );
  if (fastening !== null)
    blocks.push(
      item('Fastening', fastening.name.toLowerCase()),
      text(
        `For the closure ${construction.strap?.shape}: ${fastening.parts.map(({ name, count }) => `${count} ${name}${count === 1 ? '' : 's'}`).join(', ')}.`,
      ),
    );
  blocks.push(
    item('Cut edges', say.reel(edges.length)),
    text(
      `${capital(edges.edges.map(({ name, length }) => `${name} ${say.reel(length)}`).join(', '))}. ${HOW[edges.how]}`,
    ),
  );
  if (edges.how === 'painted')
    blocks.push(
      item('Edge paint', say.volume(edges.paint)),
      text(
        `About, for ${say.fine(rules.paintFilm_mm)} of paint on all of these edges, all coats together. Assumed. ${pictured(finish.edgeColour)}`,
      ),
      text('Read its safety data sheet; the local rules hold too.'),
    );
  return blocks;
}
