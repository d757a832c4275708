import {
  type CoverDesign,
  designName,
  designWarnings,
  FACE_TITLES,
  type LetterFaces,
  type Printer,
  placeWords,
  type ToolingAmount,
  tooledFaces,
  warningWords,
} from '../../core/index.ts';
import { type Block, heading, item, text } from './block.ts';

/** What is tooled on each face: how much, each design with its place, and where one comes too near to something. */
export function toolingSection(
  design: CoverDesign,
  amount: ToolingAmount,
  letters: LetterFaces,
  say: Printer,
): Block[] {
  const { artworks } = design.job.tooling;
  const faces = tooledFaces(design, letters).flatMap(({ area, designs }) => {
    const own = amount.faces.find(({ face }) => face === area.face);
    if (own === undefined) return [];
    const named = designs.map((placed) => `${designName(placed.design, artworks)} ${placeWords(placed.design, say)}`);
    return [
      item(FACE_TITLES[area.face], `${say.area(own.clear)} clear`),
      text(`${named.join('; ')}.`),
      ...designs.flatMap((placed) =>
        designWarnings(placed, area).map((warning) => text(warningWords(placed.design, warning, say))),
      ),
    ];
  });
  return faces.length === 0 ? [] : [heading('Tooling'), ...faces, text(`${amountWords(amount, say)}.`)];
}

/** `About 1.32 m of line, 0.3 dm² of pictures`: “about” where a title is in it, whose letters are counted. */
export function amountWords({ faces, isEstimated }: ToolingAmount, say: Printer): string {
  const sum = (of: 'line' | 'pictures'): number => faces.reduce((all, face) => all + face[of], 0);
  const [line, pictures] = [sum('line'), sum('pictures')];
  return [
    ...(line > 0 ? [`${isEstimated ? 'About ' : ''}${say.reel(line)} of line`] : []),
    ...(pictures > 0 ? [`${say.area(pictures)} of pictures`] : []),
  ].join(', ');
}
