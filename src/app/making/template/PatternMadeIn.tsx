import { Choice } from '../../fields/Choice.tsx';
import { useBench } from '../../state/BenchContext.tsx';
import { NewCard } from '../trial/NewCard.tsx';
import type { TemplateParts } from './templateParts.ts';

const MADE_IN = [
  { value: 'card', label: 'card' },
  { value: 'leather', label: 'leather' },
];

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
        title="Seen from"
        options={SIDES[choice.madeIn]}
        chosen={choice.mirrored ? 'flesh' : 'grain'}
        choose={(value) => choose({ mirrored: value === 'flesh' })}
      />
    </section>
  );
}
