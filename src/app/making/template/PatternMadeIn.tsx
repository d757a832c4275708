import { Choice } from '../../fields/Choice.tsx';
import { FigureField } from '../../fields/FigureField.tsx';
import { useBench } from '../../state/BenchContext.tsx';
import { NewCard } from '../trial/NewCard.tsx';
import type { TemplateChoice } from './templateChoice.ts';
import type { TemplateParts } from './templateParts.ts';

const MADE_IN = [
  { value: 'card', label: 'card' },
  { value: 'leather', label: 'leather' },
];

const CARDS = [
  { value: 'pieces', label: 'a card for each piece' },
  { value: 'one', label: 'one card for all' },
  { value: 'half', label: 'half of it, on folded card' },
];

const CARD_NOTES: Readonly<Record<TemplateChoice['cards'], readonly string[]>> = {
  pieces: [],
  half: ['Half the paper: lay it on card folded in two and cut through both layers.'],
  one: [
    'The outside, with the pocket mouths and the ends of the lining marked on it. A strap or a pen loop has its own card.',
  ],
};

const SIDES = {
  card: [
    { value: 'grain', label: 'outside face' },
    { value: 'flesh', label: 'inside face, mirrored' },
  ],
  leather: [
    { value: 'grain', label: 'grain side' },
    { value: 'flesh', label: 'flesh side, mirrored' },
  ],
} as const;

/** Which pattern: for a trial in card or for leather, and from which side. */
export function PatternMadeIn({ choice, choose }: TemplateParts) {
  const { design, lengths } = useBench(({ design, lengths }) => ({ design, lengths }));
  return (
    <section aria-labelledby="template-pattern">
      <h3 id="template-pattern">Pattern</h3>
      <Choice
        title="Made in"
        options={MADE_IN}
        chosen={choice.madeIn}
        choose={(value) => choose({ madeIn: value as 'card' | 'leather' })}
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
        choose={(value) => choose({ cards: value as TemplateChoice['cards'] })}
        notes={CARD_NOTES[choice.cards]}
      >
        {choice.cards === 'half' && <FigureField path="mockup.card.thickness_mm" empty="default" />}
      </Choice>
      <Choice
        title="Seen from"
        options={SIDES[choice.madeIn]}
        chosen={choice.mirrored ? 'flesh' : 'grain'}
        choose={(value) => choose({ mirrored: value === 'flesh' })}
      />
    </section>
  );
}
