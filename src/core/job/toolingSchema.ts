import * as z from 'zod/mini';
import { type FieldNote, lengthField, numberField } from './field.ts';
import { addRuleIssue } from './rule.ts';

/** Faces of the finished cover that can be tooled. */
export const TOOLING_FACES = ['front', 'spine', 'back', 'frontPocket', 'backPocket', 'strap'] as const;

/** Most that is kept inside a job, so that it stays a short file that is quick to edit. */
export const ARTWORK_LIMITS = { artworks: 12, points: 30_000, characters: 200_000, allCharacters: 500_000 } as const;

/** Most designs of a job, and letters of a title. */
export const MOST_DESIGNS = 40;
export const MOST_LETTERS = 120;

const face = z.enum(TOOLING_FACES);

const offset = (title: string) => z.prefault(lengthField(title, -2000, 2000), 0);

const times = (title: string) => {
  const note: FieldNote = { title, unit: '', min: 1, max: 40 };
  return z._default(z.int().check(z.minimum(note.min), z.maximum(note.max), z.meta({ ...note })), 1);
};

/** Where a title or drawing stands: its centre from the centre lines of its area, on the finished cover. */
const placing = {
  x_mm: offset('Right of the centre'),
  y_mm: offset('Above the centre'),
  turn_deg: z._default(numberField('Turned', 'deg', -360, 360), 0),
  mirrored: z._default(z.boolean(), false),
  repeat: z.prefault(
    z.strictObject({
      columns: times('Columns'),
      rows: times('Rows'),
      stepX_mm: z.prefault(lengthField('Column step', 0, 1000), 20),
      stepY_mm: z.prefault(lengthField('Row step', 0, 1000), 20),
    }),
    {},
  ),
};

/** One border, title or drawing. */
export const designSchema = z.discriminatedUnion(
  'kind',
  [
    z.strictObject({
      kind: z.literal('border'),
      area: face,
      lines: z._default(z.literal([1, 2]), 1),
      corners: z._default(z.enum(['square', 'rounded', 'notched']), 'square'),
      inset_mm: z.prefault(lengthField('Inset', 0, 500), 0),
      gap_mm: z.prefault(lengthField('Between the lines', 0.5, 100), 2),
      corner_mm: z.prefault(lengthField('Corner', 0, 200), 8),
    }),
    z.strictObject({
      kind: z.literal('title'),
      area: face,
      text: z.string().check(z.minLength(1), z.maxLength(MOST_LETTERS)),
      face: z._default(z.string().check(z.maxLength(40)), ''),
      height_mm: z.prefault(lengthField('Letter height', 1, 300), 10),
      reading: z._default(z.enum(['across', 'down', 'up']), 'across'),
      ...placing,
    }),
    z.strictObject({
      kind: z.literal('drawing'),
      area: face,
      artwork: z.string().check(z.maxLength(40)),
      width_mm: z.prefault(lengthField('Drawing width', 1, 2000), 40),
      ...placing,
    }),
  ],
  'border, title, drawing',
);

const artworkShape = {
  id: z.string().check(z.minLength(1), z.maxLength(40)),
  name: z.string().check(z.maxLength(120)),
  width: z.int().check(z.minimum(1), z.maximum(10_000)),
  height: z.int().check(z.minimum(1), z.maximum(10_000)),
};

const data = z.string().check(z.maxLength(ARTWORK_LIMITS.characters));

const artworkSchema = z.discriminatedUnion(
  'kind',
  [
    /** Path data of relative lines in whole grid units, y down. */
    z.strictObject({ ...artworkShape, kind: z.literal('lines'), lines: data }),
    /** Grey of each pixel, row by row from the top, 255 for untouched leather; deflated (RFC 1950), in base64. */
    z.strictObject({ ...artworkShape, kind: z.literal('picture'), pixels: data }),
  ],
  'lines, picture',
);

const margin = (title: string, usual: number) => z.prefault(lengthField(title, 0, 200), usual);

/** What is tooled into the leather, and how far it keeps off. Margins are common practice, no source. */
export const toolingSchema = z
  .prefault(
    z.strictObject({
      margins: z.prefault(
        z.strictObject({
          head_mm: margin('Margin at the head', 5),
          tail_mm: margin('Margin at the tail', 5),
          foreEdge_mm: margin('Margin at the fore-edge', 5),
          spine_mm: margin('Margin at the spine', 5),
          narrow_mm: margin('Margin across spine and strap', 2),
        }),
        {},
      ),
      depth_mm: z.prefault(lengthField('Depth of the lines', 0.05, 2), 0.4),
      line_mm: z.prefault(lengthField('Width of the lines', 0.2, 5), 0.8),
      designs: z
        ._default(z.array(designSchema).check(z.maxLength(MOST_DESIGNS)), [])
        .check(z.meta({ title: 'Designs' })),
      artworks: z
        ._default(z.array(artworkSchema).check(z.maxLength(ARTWORK_LIMITS.artworks)), [])
        .check(z.meta({ title: 'Drawings' })),
    }),
    {},
  )
  .check(
    z.superRefine(({ designs, artworks }, context) => {
      const known = artworks.map(({ id }) => id);
      const lost = designs.findIndex((design) => design.kind === 'drawing' && !known.includes(design.artwork));
      if (lost >= 0)
        addRuleIssue(
          context,
          ['designs', lost, 'artwork'],
          (designs[lost] as { artwork: string }).artwork,
          `a drawing of this job${known.length > 0 ? `: ${known.join(', ')}` : ''}`,
          'open the drawing again, or take the design out',
        );
      const twice = known.find((id, i) => known.indexOf(id) !== i);
      if (twice !== undefined)
        addRuleIssue(context, ['artworks'], twice, 'each id once', 'give the second drawing another id');
      const size = artworks.reduce((sum, art) => sum + (art.kind === 'lines' ? art.lines : art.pixels).length, 0);
      if (size > ARTWORK_LIMITS.allCharacters)
        addRuleIssue(
          context,
          ['artworks'],
          `${size} characters`,
          `at most ${ARTWORK_LIMITS.allCharacters} in all drawings of a job`,
          'take a drawing out, or draw it with fewer points',
        );
    }),
  );

export type ToolingFace = (typeof TOOLING_FACES)[number];
type Tooling = z.output<typeof toolingSchema>;
/** One border, title or drawing on a face of the cover. */
export type ToolingDesign = Tooling['designs'][number];
/** A drawing of the maker's own, kept inside the job. */
export type Artwork = Tooling['artworks'][number];
