import type { CardsChoice } from '../../../output/template/drawnTemplate.ts';
import { Choice } from '../../fields/Choice.tsx';
import { FigureField } from '../../fields/FigureField.tsx';
import { useBench } from '../../state/BenchContext.tsx';
import { NewCard } from '../trial/NewCard.tsx';

const MADE_IN = [
  { value: 'card', label: 'card' },
  { value: 'leather', label: 'leather' },
];

const CARDS = [
  { value: 'pieces', label: 'a card for each piece' },
  { value: 'one', label: 'one card for all' },
  { value: 'half', label: 'half of it, on folded card' },
];

const CARD_NOTES: Readonly<Record<CardsChoice['cards'], readonly string[]>> = {
  pieces: [],
  one: [
    'The outside, with the pocket mouths and the ends of the lining marked on it. How each piece is cut by it stands under the drawing. A strap or a pen loop has its own card.',
  ],
  half: ['Half the paper: lay it on card folded in two and cut through both layers.'],
};

interface CardChoicesProps {
  readonly choice: CardsChoice;
  readonly choose: (change: Partial<CardsChoice>) => void;
}

/** Which pattern: for a trial in card or for leather, and on how many cards. */
export function CardChoices({ choice, choose }: CardChoicesProps) {
  const { design, lengths } = useBench(({ design, lengths }) => ({ design, lengths }));
  return (
    <>
      <Choice
        title="Made in"
        options={MADE_IN}
        chosen={choice.madeIn}
        choose={(value) => choose({ madeIn: value as CardsChoice['madeIn'] })}
        notes={[
          choice.madeIn === 'card'
            ? `Sized for card of ${lengths.size(design.job.mockup.card.thickness_mm)}, so smaller than in leather: for the trial, not for cutting leather.`
            : 'Sized for the thick end of the leather.',
        ]}
      />
      {choice.madeIn === 'card' && <NewCard />}
      <Choice
        title="Cards"
        options={CARDS}
        chosen={choice.cards}
        choose={(value) => choose({ cards: value as CardsChoice['cards'] })}
        notes={CARD_NOTES[choice.cards]}
      >
        {choice.cards === 'half' && <FigureField path="mockup.card.thickness_mm" empty="default" />}
      </Choice>
    </>
  );
}
