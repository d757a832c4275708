import {
  type CoverDesign,
  type Drawing,
  halfCard,
  type LetterFaces,
  oneCard,
  type PatternSource,
  patternDrawing,
  tooledPattern,
} from '../../../core/index.ts';
import { cardOf } from '../cardOf.ts';
import type { TemplateChoice } from './templateChoice.ts';

/** Which pattern is drawn, and on which cards. */
export type CardsChoice = Pick<TemplateChoice, 'madeIn' | 'cards'>;

const DRAWN = {
  pieces: { name: '', draw: (source: PatternSource) => patternDrawing(source) },
  one: { name: 'one card', draw: oneCard },
  half: { name: 'half card', draw: halfCard },
} as const;

/** What the choice is called in titles and file names. */
export const cardWords = ({ madeIn, cards }: CardsChoice): readonly string[] =>
  [madeIn, DRAWN[cards].name].filter(Boolean);

/**
 * The pattern on the chosen cards, and what it is drawn from.
 * @param faces letters of the tooling that cards for each piece show; null leaves it out
 */
export function drawnCards(
  design: CoverDesign,
  choice: CardsChoice,
  faces: LetterFaces | null = null,
): { readonly source: PatternSource; readonly drawing: Drawing } {
  const source = choice.madeIn === 'card' ? cardOf(design.job) : design;
  const title = [design.job.name, ...cardWords(choice)].join(', ');
  const drawing =
    choice.cards === 'pieces' && faces !== null ? tooledPattern(source, faces) : DRAWN[choice.cards].draw(source);
  return { source, drawing: { ...drawing, title } };
}
