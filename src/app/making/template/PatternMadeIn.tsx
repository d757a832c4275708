import { Choice } from '../../fields/Choice.tsx';
import { CardChoices } from './CardChoices.tsx';
import type { TemplateParts } from './templateParts.ts';

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

/** Which pattern: in card or leather, on how many cards, and from which side. */
export function PatternMadeIn({ choice, choose }: TemplateParts) {
  return (
    <section aria-labelledby="template-pattern">
      <h3 id="template-pattern">Pattern</h3>
      <CardChoices choice={choice} choose={choose} />
      <Choice
        title="Seen from"
        options={SIDES[choice.madeIn]}
        chosen={choice.mirrored ? 'flesh' : 'grain'}
        choose={(value) => choose({ mirrored: value === 'flesh' })}
      />
    </section>
  );
}
