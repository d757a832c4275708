import * as z from 'zod/mini';
import { LAYERS } from '../../../core/index.ts';
import { keptChoice } from '../../state/keptChoice.ts';

/** How the template is put on paper: kept in the browser, because it belongs to the printer and not to the job. */
const typed = (usual: string) => z._default(z.string().check(z.maxLength(40)), usual);

const templateChoiceSchema = z.object({
  /** Where the job is tooled: its pattern, or tracings of the tooling. */
  drawn: z._default(z.enum(['pattern', 'tracings']), 'pattern'),
  hasTooling: z._default(z.boolean(), true),
  /** The tooling areas go to a machine only where they are asked for. */
  hasAreas: z._default(z.boolean(), false),
  /** Tracings that are laid on with the drawn side down. */
  transferred: z._default(z.boolean(), false),
  madeIn: z._default(z.enum(['card', 'leather']), 'card'),
  cards: z._default(z.enum(['pieces', 'one', 'half']), 'pieces'),
  paper: z._default(z.enum(['A4', 'Letter', 'A3', 'Tabloid', 'A2', 'A1', 'A0', 'roll']), 'A4'),
  /** Texts as typed; a figure without a unit is mm. */
  roll: typed('610'),
  barX: typed(''),
  barY: typed(''),
  kerf: typed(''),
  /** One of the maker's machines by its id; empty for a file without one. */
  machine: typed(''),
  machineLeather: z._default(z.string().check(z.maxLength(60)), ''),
  machineThickness: typed(''),
  strips: z._default(z.boolean(), false),
  mirrored: z._default(z.boolean(), false),
  /** Layers left out of the cutting files: a layer that comes with a later version is in them. */
  leftOut: z._default(z.array(z.enum(LAYERS)), []),
});

export type TemplateChoice = z.output<typeof templateChoiceSchema>;

export const { read: keptTemplateChoice, keep: keepTemplateChoice } = keptChoice(
  'coverwright.template.v1',
  templateChoiceSchema,
);
