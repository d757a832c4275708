import * as z from 'zod/mini';
import { lengthField, numberField } from './field.ts';
import { addRuleIssue } from './rule.ts';

const edge = (title: string) =>
  z._default(
    z.nullable(
      lengthField(title, -60, 60, 'From the board edge to where it stops, in the card; an overrun is negative.'),
    ),
    null,
  );

const cut = (title: string, max: number) =>
  z._default(z.nullable(lengthField(title, 20, max, 'As the card was cut. Left empty: as the tool sizes it.')), null);

/** A measure taken again because of what the card showed; the first one stays as it was typed. Absent where none was. */
const again = (title: string, min: number, max: number, description: string) =>
  z._default(z.nullable(lengthField(title, min, max, description)), null);

/** A trial of the cover in card: the card itself, what it showed on the book, and what was measured again after it. */
export const mockupSchema = z.prefault(
  z.strictObject({
    card: z.prefault(
      z.strictObject({
        thickness_mm: z.prefault(lengthField('Card thickness', 0.1, 3, 'About 0.5 mm at 400 g/m2. Assumption.'), 0.5),
        neutral: z._default(
          numberField(
            'Card K factor',
            '',
            0.4,
            0.8,
            'Share of the thickness, counted from the inside of a fold, at which the card keeps its length. Scored card folds about its middle. Assumption.',
          ),
          0.5,
        ),
        bendRatio: z._default(
          numberField('Card bend ratio', '', 0.02, 3, 'Inside radius of a scored fold over the thickness. Assumption.'),
          0.5,
        ),
        cutWidth_mm: cut('Card width', 4000),
        cutHeight_mm: cut('Card height', 2000),
      }),
      {},
    ),
    readings: z
      .prefault(
        z.strictObject({
          front_mm: edge('Front fore-edge'),
          back_mm: edge('Back fore-edge'),
          head_mm: edge('Head'),
          tail_mm: edge('Tail'),
          closes: z._default(z.nullable(z.boolean()), null).check(z.meta({ title: 'The card closes' })),
          opening_deg: z._default(
            z.nullable(
              numberField(
                'Stays open',
                'deg',
                0,
                180,
                'Angle between the boards where the card holds the book open; 0 closed.',
              ),
            ),
            null,
          ),
          error_mm: z.prefault(
            lengthField('Reading error', 0.05, 5, 'How far any one of these readings may be off.'),
            0.25,
          ),
          stop_mm: z.prefault(
            lengthField(
              'Stop error',
              0,
              5,
              'How far off the stop may be taken to be, alike at both sides. It cannot be seen inside the card. Assumption.',
            ),
            0.5,
          ),
          error_deg: z._default(numberField('Angle error', 'deg', 0.1, 45, 'How far the angle may be off.'), 3),
        }),
        {},
      )
      .check(
        z.superRefine(({ closes, opening_deg: opening }, context) => {
          if (closes === true && opening !== null && opening > 0)
            addRuleIssue(
              context,
              ['opening_deg'],
              opening,
              'none (null) or 0 for a card that closes',
              'say that the card does not close, or take the angle out',
            );
        }),
      ),
    again: z.optional(
      z.strictObject({
        spine_mm: again(
          'Spine by callipers',
          1,
          300,
          'Thickness at the spine, over both boards at the joints, book closed.',
        ),
        width_mm: again('Width, again', 30, 1000, 'A second measure, taken without looking at the first.'),
        height_mm: again('Height, again', 30, 1500, 'A second measure, taken without looking at the first.'),
        rise_mm: again(
          'Rise, by a straight edge',
          0,
          150,
          'From the line between the boards to the top of the spine; 0 where it is flat.',
        ),
      }),
    ),
  }),
  {},
);
