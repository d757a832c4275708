import {
  type CoverDesign,
  cardDesign,
  type Drawing,
  halfCard,
  holeStrips,
  type LetterFaces,
  oneCard,
  type PatternSource,
  patternDrawing,
  tooledFaces,
  tooledPattern,
  tracingDrawing,
} from '../../core/index.ts';

/** Which pattern is drawn, and on which cards. */
export interface CardsChoice {
  readonly madeIn: 'card' | 'leather';
  readonly cards: 'pieces' | 'one' | 'half';
}

/** What a template shows. */
export interface DrawnChoice extends CardsChoice {
  /** Of a job that is tooled: its pattern, or tracings of the tooling. */
  readonly drawn: 'pattern' | 'tracings';
  /** Whether cards for each piece show the tooling. */
  readonly hasTooling: boolean;
  /** Whether strips of its holes are printed with the pattern. */
  readonly strips: boolean;
  /** Whether the pattern is seen from the flesh side. */
  readonly mirrored: boolean;
  /** Whether tracings are laid on with the drawn side down. */
  readonly transferred: boolean;
}

/** A template as every file of it is drawn. */
export interface DrawnTemplate {
  readonly source: PatternSource;
  /** Grain side up, however it is seen. */
  readonly drawing: Drawing;
  /** The same with what is on paper only: strips of holes. */
  readonly onPaper: Drawing;
  readonly mirrored: boolean;
  readonly isTracing: boolean;
  /** What tells its files from others of the job; and those on paper. */
  readonly variants: readonly string[];
  readonly paperVariants: readonly string[];
}

const DRAWN = {
  pieces: { name: '', draw: (source: PatternSource) => patternDrawing(source) },
  one: { name: 'one card', draw: oneCard },
  half: { name: 'half card', draw: halfCard },
} as const;

/** What the choice is called in titles and file names. */
export const cardWords = ({ madeIn, cards }: CardsChoice): readonly string[] =>
  [madeIn, DRAWN[cards].name].filter(Boolean);

/** Gives the job in card, for its trial. */
export type CardOf = (job: CoverDesign['job']) => ReturnType<typeof cardDesign>;

const usualCard: CardOf = (job) => cardDesign(job, job.mockup.card);

/**
 * The pattern on the chosen cards, and what it is drawn from.
 * @param faces letters of the tooling that cards for each piece show; null leaves it out
 */
export function drawnCards(
  design: CoverDesign,
  choice: CardsChoice,
  faces: LetterFaces | null = null,
  cardOf: CardOf = usualCard,
): Pick<DrawnTemplate, 'source' | 'drawing'> {
  const source = choice.madeIn === 'card' ? cardOf(design.job) : design;
  const title = [design.job.name, ...cardWords(choice)].join(', ');
  const drawing =
    choice.cards === 'pieces' && faces !== null ? tooledPattern(source, faces) : DRAWN[choice.cards].draw(source);
  return { source, drawing: { ...drawing, title } };
}

/**
 * The template of a job, or the tracings of its tooling.
 * @param faces letters of the tooling
 */
export function drawnTemplate(
  design: CoverDesign,
  choice: DrawnChoice,
  faces: LetterFaces,
  cardOf: CardOf = usualCard,
): DrawnTemplate {
  const { name, tooling } = design.job;
  const isTracing = tooling.designs.length > 0 && choice.drawn === 'tracings';
  const mirrored = isTracing ? choice.transferred : choice.mirrored;
  const { source, drawing } = isTracing
    ? {
        source: design,
        drawing: { ...tracingDrawing(design, tooledFaces(design, faces)), title: `${name}, tracings` },
      }
    : drawnCards(design, choice, choice.hasTooling ? faces : null, cardOf);
  const isTooled = tooling.designs.length > 0 && choice.hasTooling && choice.cards === 'pieces';
  const variants = [
    ...(isTracing ? ['tracings'] : [...cardWords(choice), isTooled ? 'with tooling' : '']),
    mirrored ? 'mirrored' : '',
  ];
  const strips = isTracing || !choice.strips ? [] : holeStrips(source);
  return {
    source,
    drawing,
    onPaper: { ...drawing, pieces: [...drawing.pieces, ...strips] },
    mirrored,
    isTracing,
    variants,
    paperVariants: [...variants, strips.length > 0 ? 'strips' : ''],
  };
}
