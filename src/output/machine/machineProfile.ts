import * as z from 'zod/mini';
import { addRuleIssue, type JobIssue, jobIssue, jobIssues } from '../../core/index.ts';
import { CAUTION_LAYER, CUTTING_LAYERS, type CuttingLayer } from '../cuttingFile.ts';

/** Layers that a pass may take: all of a cutting file but the cautions, which no machine draws. */
const MACHINE_LAYERS: readonly string[] = CUTTING_LAYERS.map(({ name }) => name).filter(
  (name) => name !== CAUTION_LAYER.name,
);

const number = (min: number, max: number) => z.number().check(z.minimum(min), z.maximum(max));
const whole = (min: number, max: number) => z.int().check(z.minimum(min), z.maximum(max));
const words = (least: number, most: number) => z.string().check(z.minLength(least), z.maxLength(most));

/** What the beam burns away of one leather at one thickness, as the maker has read it from a test. */
const kerfRowSchema = z.strictObject({
  leather: words(1, 60),
  thickness_mm: number(0.2, 8),
  kerf_mm: number(0, 2),
});

/** One run of the machine, with one setting. What is null is as in the file without a machine. */
const passSchema = z.strictObject({
  name: words(1, 40),
  layers: z.array(z.enum(MACHINE_LAYERS as [string, ...string[]])).check(z.minLength(1), z.maxLength(20)),
  /** Colour of its lines in SVG. */
  colour: z._default(
    z.nullable(z.string().check(z.regex(/^#[0-9a-f]{6}$/, 'six figures of 0 to 9 and a to f, such as #00ff00'))),
    null,
  ),
  /** Name of its layer in DXF, by the rules of R12, and of its group in SVG. */
  layer: z._default(
    z.nullable(z.string().check(z.regex(/^[A-Z0-9_$-]{1,31}$/, 'up to 31 capitals, figures, _ and -'))),
    null,
  ),
  /** Number of its colour in DXF. */
  dxfColour: z._default(z.nullable(whole(1, 255)), null),
  /** Number of its pen in HPGL; its place in the list where null. */
  pen: z._default(z.nullable(whole(1, 99)), null),
  /** The maker's own notes: they are printed, never interpreted. */
  power: z._default(words(0, 80), ''),
  speed: z._default(words(0, 80), ''),
});

/** The document of a machine: `coverwright-machine`, version 1. Lengths in mm. */
const machineSchema = z
  .strictObject({
    format: z.literal('coverwright-machine'),
    version: z.literal(1),
    name: words(1, 80),
    bed: z.strictObject({ width_mm: number(20, 5000), height_mm: number(20, 5000) }),
    /** Kept free along every edge of the bed. */
    margin_mm: z._default(number(0, 200), 5),
    /** From piece to piece, between what is burnt. */
    gap_mm: z._default(number(0, 100), 3),
    kerfs: z._default(z.array(kerfRowSchema).check(z.maxLength(200)), []),
    passes: z._default(z.array(passSchema).check(z.maxLength(MACHINE_LAYERS.length)), []),
    /** Words as single strokes in a pass of their own, or left out. */
    words: z._default(z.enum(['strokes', 'none']), 'none'),
    curves: z._default(
      z.strictObject({ as: z.enum(['arcs', 'points']), tolerance_mm: z._default(number(0.001, 0.5), 0.01) }),
      { as: 'arcs', tolerance_mm: 0.01 },
    ),
    dxf: z._default(z.enum(['R12', '2000']), '2000'),
    /** Crosses that a sheet is laid by again once it is turned over. */
    crosses: z._default(z.boolean(), false),
  })
  .check(
    z.superRefine(({ bed, margin_mm, kerfs, passes, words: lettering }, context) => {
      const room = Math.min(bed.width_mm, bed.height_mm) / 2;
      if (margin_mm >= room)
        addRuleIssue(context, ['margin_mm'], margin_mm, `less than half the bed, ${room}`, 'take a smaller margin');
      kerfs.forEach((row, i) => {
        if (kerfs.slice(0, i).some((before) => sameRow(before, row)))
          addRuleIssue(
            context,
            ['kerfs', i],
            `${row.leather} at ${row.thickness_mm} mm`,
            'each leather and thickness once',
            'keep the newer reading and take the other row out',
          );
      });
      for (const { path, got, allowed, remedy } of passFaults(passes, lettering))
        addRuleIssue(context, path, got, allowed, remedy);
    }),
  );

export type MachineProfile = z.output<typeof machineSchema>;
export type MachinePass = MachineProfile['passes'][number];
export type KerfRow = MachineProfile['kerfs'][number];

const sameRow = (a: KerfRow, b: KerfRow): boolean =>
  sameLeather(a.leather, b.leather) && a.thickness_mm === b.thickness_mm;

/** Whether two entries name the same leather: capitals and spaces round it do not count. */
export const sameLeather = (a: string, b: string): boolean =>
  a.trim().toLocaleLowerCase('en') === b.trim().toLocaleLowerCase('en');

/** Place of a layer in the work, inside out: what is only drawn, holes and slits, the cut edge. */
export const depthOf = (layer: string): 0 | 1 | 3 =>
  layer === 'CUT' ? 3 : layer === 'HOLE' || layer === 'SLIT' ? 1 : 0;

const layerNamed = (name: string): CuttingLayer => CUTTING_LAYERS.find((layer) => layer.name === name)!;

/** What a pass is called and coloured by in the files. */
export interface PassMarks {
  readonly layer: string;
  readonly colour: string;
  readonly dxfColour: number;
  readonly pen: number;
}

/** Marks of a pass: the maker's own, else those of its first layer in the file without a machine. */
export function passMarks({ layers, layer, colour, dxfColour, pen }: MachinePass, index: number): PassMarks {
  const first = layerNamed(layers[0]!);
  return {
    layer: layer ?? first.name,
    colour: colour ?? first.colour,
    dxfColour: dxfColour ?? first.aci,
    pen: pen ?? index + 1,
  };
}

interface PassFault {
  readonly path: readonly (string | number)[];
  readonly got: string;
  readonly allowed: string;
  readonly remedy: string;
}

/** What is wrong with passes taken together. */
function passFaults(passes: readonly MachinePass[], lettering: MachineProfile['words']): PassFault[] {
  const faults: PassFault[] = [];
  const seen = new Map<string, string>();
  let deepest = 0;
  passes.forEach((pass, i) => {
    // One that takes nothing is refused by itself.
    if (pass.layers.length === 0) return;
    const path = ['passes', i, 'layers'] as const;
    for (const layer of pass.layers) {
      const before = seen.get(layer);
      if (before !== undefined)
        faults.push({
          path,
          got: layer,
          allowed: 'each layer in one pass, once',
          remedy: `pass ${before} takes it too: take it out of one of them, or it is burnt twice`,
        });
      seen.set(layer, pass.name);
    }
    if (pass.layers.includes('TEXT') && pass.layers.some((layer) => layer !== 'TEXT'))
      faults.push({
        path,
        got: pass.layers.join(', '),
        allowed: 'TEXT alone in its pass',
        remedy: 'give the words a pass of their own',
      });
    const depths = pass.layers.map(depthOf);
    if (Math.min(...depths) < deepest)
      faults.push({
        path,
        got: pass.layers.join(', '),
        allowed: 'marks, then holes and slits, then the cut edge',
        remedy: `move this pass up, before the pass of ${deepest === 3 ? 'the cut edge' : 'holes and slits'}: a piece that is cut free may shift`,
      });
    deepest = Math.max(deepest, ...depths);
    for (const mark of ['layer', 'colour', 'dxfColour', 'pen'] as const) {
      const value = passMarks(pass, i)[mark];
      const other = passes.slice(0, i).find((each, k) => each.layers.length > 0 && passMarks(each, k)[mark] === value);
      if (other !== undefined)
        faults.push({
          path: ['passes', i, mark],
          got: `${value}`,
          allowed: `a ${mark} that no other pass has`,
          remedy: `pass ${other.name} has it too: give one of them another, because the machine tells passes apart by it`,
        });
    }
  });
  if (lettering === 'strokes' && passes.length > 0 && !seen.has('TEXT'))
    faults.push({
      path: ['words'],
      got: 'strokes',
      allowed: 'a pass that takes TEXT, or words left out ("none")',
      remedy: 'add a pass for the words, or leave them out',
    });
  return faults;
}

export type ParsedMachine =
  | { readonly ok: true; readonly profile: MachineProfile }
  | { readonly ok: false; readonly issues: readonly JobIssue[] };

/** Largest file of a machine, in characters. */
const MOST_CHARACTERS = 200_000;

/**
 * Checks a value against the document of a machine and fills in the defaults.
 * @returns the profile, or every issue found at once; never throws
 */
export function parseMachine(value: unknown): ParsedMachine {
  const result = machineSchema.safeParse(value);
  return result.success
    ? { ok: true, profile: result.data }
    : { ok: false, issues: jobIssues(result.error, value, 'machine') };
}

/** Reads a machine from the text of its file; what is no JSON is an issue at the path `(file)`. */
export function parseMachineText(text: string): ParsedMachine {
  const refused = (code: JobIssue['code'], got: string, remedy: string): ParsedMachine => ({
    ok: false,
    issues: [jobIssue(code, '(file)', got, 'a machine document in JSON', remedy)],
  });
  if (text.length > MOST_CHARACTERS)
    return refused('too_large', `${text.length} characters`, 'check that this is the file you meant');
  if (text.trim() === '') return refused('empty', 'nothing', 'save a machine as a file and open that');
  try {
    return parseMachine(JSON.parse(text.replace(/^\uFEFF/, '')));
  } catch (error) {
    return refused('not_json', (error as Error).message, 'check quotes, commas and brackets near the place named');
  }
}

/** Reads a machine's file that the maker chose. As `parseMachineText`; one that cannot be read, or far too large, is refused. */
export async function openMachineFile(file: Blob): Promise<ParsedMachine> {
  // A character takes at most 4 bytes; a larger file is not read.
  if (file.size > 4 * MOST_CHARACTERS) return parseMachineText('x'.repeat(MOST_CHARACTERS + 1));
  try {
    return parseMachineText(await file.text());
  } catch {
    const remedy = 'choose the file again: it may have been moved, or changed after it was chosen';
    const issue = jobIssue('unreadable', '(file)', 'a file that cannot be read', 'a machine document in JSON', remedy);
    return { ok: false, issues: [issue] };
  }
}

/** The text of a machine's file: it reads back as the same profile. */
export const machineText = (profile: MachineProfile): string => `${JSON.stringify(profile, null, 2)}\n`;
