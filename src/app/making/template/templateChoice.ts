import { z } from 'zod';
import { LAYERS } from '../../../core/index.ts';
import { keptChoice } from '../../state/keptChoice.ts';

/** How the template is put on paper: kept in the browser, because it belongs to the printer and not to the job. */
const templateChoiceSchema = z.object({
  madeIn: z.enum(['card', 'leather']).default('card'),
  paper: z.enum(['A4', 'Letter', 'A3', 'Tabloid', 'roll']).default('A4'),
  /** Texts as typed; a figure without a unit is mm. */
  roll: z.string().max(40).default('610'),
  barX: z.string().max(40).default(''),
  barY: z.string().max(40).default(''),
  kerf: z.string().max(40).default(''),
  mirrored: z.boolean().default(false),
  /** Layers of the cutting files. */
  layers: z.array(z.enum(LAYERS)).default([...LAYERS]),
});

export type TemplateChoice = z.output<typeof templateChoiceSchema>;

export const { read: keptTemplateChoice, keep: keepTemplateChoice } = keptChoice(
  'coverwright.template.v1',
  templateChoiceSchema,
);
