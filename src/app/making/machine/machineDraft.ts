import * as z from 'zod/mini';
import { capital, parseLength, parseTypedNumber } from '../../../core/index.ts';
import { type MachineProfile, parseMachine } from '../../../output/machine/machineProfile.ts';
import { LAYER_TITLES, layerTitle } from './layerTitles.ts';

const typed = (usual = '') => z._default(z.string().check(z.maxLength(200)), usual);

const passSchema = z.object({
  name: typed(),
  layers: z._default(z.array(z.string().check(z.maxLength(20))), []),
  colour: typed(),
  layer: typed(),
  dxfColour: typed(),
  pen: typed(),
  power: typed(),
  speed: typed(),
});

/** A machine as it is being typed: figures are texts, so that nothing that is no figure yet is lost. */
export const machineDraftSchema = z.object({
  id: z.string(),
  name: typed(),
  width: typed(),
  height: typed(),
  margin: typed('5'),
  gap: typed('3'),
  kerfs: z._default(z.array(z.object({ leather: typed(), thickness: typed(), kerf: typed() })), []),
  passes: z._default(z.array(passSchema), []),
  words: z._default(z.enum(['strokes', 'none']), 'none'),
  curves: z._default(z.enum(['arcs', 'points']), 'arcs'),
  tolerance: typed('0.01'),
  dxf: z._default(z.enum(['R12', '2000']), '2000'),
  crosses: z._default(z.boolean(), false),
});

export type MachineDraft = z.output<typeof machineDraftSchema>;
export type PassDraft = MachineDraft['passes'][number];

/** A draft as read: the machine where it is whole, and what is wrong by the path of its document. */
export interface ReadMachine {
  readonly profile: MachineProfile | null;
  readonly issues: ReadonlyMap<string, string>;
}

/** Reads a draft; lengths without a unit are mm. */
export function readMachine(draft: MachineDraft): ReadMachine {
  const issues = new Map<string, string>();
  const read = (path: string, text: string, kind: 'length' | 'whole'): number | undefined => {
    const reading = kind === 'length' ? parseLength(text, { defaultUnit: 'mm' }) : readWhole(text);
    if (reading.ok) return reading.value;
    issues.set(path, reading.message);
    return undefined;
  };
  const wholeOrNull = (path: string, text: string) => (text.trim() === '' ? null : read(path, text, 'whole'));
  const document = {
    format: 'coverwright-machine',
    version: 1,
    name: draft.name.trim(),
    bed: {
      width_mm: read('bed.width_mm', draft.width, 'length'),
      height_mm: read('bed.height_mm', draft.height, 'length'),
    },
    margin_mm: read('margin_mm', draft.margin, 'length'),
    gap_mm: read('gap_mm', draft.gap, 'length'),
    kerfs: draft.kerfs.map(({ leather, thickness, kerf }, i) => ({
      leather: leather.trim(),
      thickness_mm: read(`kerfs.${i}.thickness_mm`, thickness, 'length'),
      kerf_mm: read(`kerfs.${i}.kerf_mm`, kerf, 'length'),
    })),
    passes: draft.passes.map(({ name, layers, colour, layer, dxfColour, pen, power, speed }, i) => ({
      name: name.trim(),
      layers,
      colour: colour.trim() === '' ? null : colour.trim().toLowerCase(),
      layer: layer.trim() === '' ? null : layer.trim().toUpperCase(),
      dxfColour: wholeOrNull(`passes.${i}.dxfColour`, dxfColour),
      pen: wholeOrNull(`passes.${i}.pen`, pen),
      power,
      speed,
    })),
    words: draft.words,
    curves: { as: draft.curves, tolerance_mm: read('curves.tolerance_mm', draft.tolerance, 'length') },
    dxf: draft.dxf,
    crosses: draft.crosses,
  };
  const parsed = parseMachine(document);
  if (!parsed.ok)
    for (const { path, code, got, allowed, remedy } of parsed.issues) {
      const place = path.replace(/^(passes\.\d+\.layers)\.\d+$/, '$1');
      if (issues.has(place)) continue;
      issues.set(place, code === 'range' && got === '0 characters' ? 'Type a name.' : sentence(got, allowed, remedy));
    }
  return { profile: parsed.ok && issues.size === 0 ? parsed.profile : null, issues };
}

/** Names of layers in a message of the document, which the screen has in words. */
const LAYER = new RegExp(`\\b(${LAYER_TITLES.map(([layer]) => layer).join('|')})\\b`, 'g');

const sentence = (got: string, allowed: string, remedy: string): string =>
  inWords(`Got ${got}; allowed: ${allowed}. ${capital(remedy)}.`);

const inWords = (message: string): string => message.replace(LAYER, (layer) => layerTitle(layer));

function readWhole(text: string): { ok: true; value: number } | { ok: false; message: string } {
  const number = parseTypedNumber(text.trim());
  if ('remedy' in number || number.numerator % number.denominator !== 0)
    return { ok: false, message: `“${text.trim().slice(0, 20)}” is not a whole number. Write one, such as 3.` };
  return { ok: true, value: number.numerator / number.denominator };
}

/** A machine from a file, to be edited. */
export function machineDraft(profile: MachineProfile, id: string): MachineDraft {
  const text = (value: number | null): string => (value === null ? '' : String(value));
  return {
    id,
    name: profile.name,
    width: text(profile.bed.width_mm),
    height: text(profile.bed.height_mm),
    margin: text(profile.margin_mm),
    gap: text(profile.gap_mm),
    kerfs: profile.kerfs.map(({ leather, thickness_mm, kerf_mm }) => ({
      leather,
      thickness: text(thickness_mm),
      kerf: text(kerf_mm),
    })),
    passes: profile.passes.map(({ colour, layer, dxfColour, pen, ...rest }) => ({
      ...rest,
      colour: colour ?? '',
      layer: layer ?? '',
      dxfColour: text(dxfColour),
      pen: text(pen),
    })),
    words: profile.words,
    curves: profile.curves.as,
    tolerance: text(profile.curves.tolerance_mm),
    dxf: profile.dxf,
    crosses: profile.crosses,
  };
}
