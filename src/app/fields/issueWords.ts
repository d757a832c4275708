import { capital, findFieldNote, type JobIssue, signed } from '../../core/index.ts';

const PLACES: Readonly<Record<string, string>> = {
  '(file)': 'The file',
  '(link)': 'The link',
  '(document)': 'The job',
  'pockets.depth_mm': 'Pocket depth',
  'construction.penLoop': 'Pen loop',
  'construction.strap': 'Closure',
  'construction.ribbon': 'Ribbon',
};

/**
 * Where an issue lies, in the words of the form: `Board`, `Outside weight`, `Pocket depth`. A place that the form does not
 * know keeps its path.
 */
export function labelAt(path: string): string {
  const [, piece, field] = /^leather\.(outside|pocket|lining)(?:\.(\w+))?$/.exec(path) ?? [];
  const [, skin, look = 'finish'] = /^finish\.(outside|pocket|lining)(?:\.(\w+))?$/.exec(path) ?? [];
  if (skin !== undefined) return `${capital(skin)} ${look}`;
  const title = findFieldNote(path)?.title ?? path;
  if (piece === undefined) return PLACES[path] ?? title;
  const isWeight = field === undefined || field === 'min_mm' || field === 'max_mm';
  return `${capital(piece)} ${isWeight ? 'weight' : `${title.charAt(0).toLowerCase()}${title.slice(1)}`}`;
}

/** An issue without its place, as a sentence for the screen: units beside figures, labels in place of paths. */
export function issueWords({ code, path, got, allowed, remedy, words }: JobIssue): string {
  if (words !== undefined) return capital(words);
  const note = findFieldNote(path);
  const unit = note?.unit ? ` ${note.unit}` : '';
  const isFigure = note !== undefined && Number.isFinite(Number(got));
  // A share stands in the job as it is, and is shown in percent.
  const shown = (value: string | number): string =>
    signed(note?.unit === '%' ? String(Number((100 * Number(value)).toPrecision(12))) : String(value));
  if (code === 'missing') return 'Missing.';
  if (code === 'range' && isFigure)
    return `${shown(got)}${unit} is too ${Number(got) < note.min ? 'small' : 'large'}: ${shown(note.min)} to ${shown(note.max)}${unit} is allowed. Check the measure and its unit.`;
  const given = got === 'an object' ? '' : isFigure ? `${shown(got)}${unit}; ` : `${got}; `;
  const plain = `${given}${code === 'rule' ? 'it must be' : 'wanted:'} ${allowed}. ${capital(remedy)}.`;
  return capital(plain.replace(/ \((?:null|\w+(?:\.\w+)+)\)/g, ''));
}

/** An issue with its place, as `Width is missing.` or `Board: two boards ...`. */
export const issueLine = (issue: JobIssue): string =>
  issue.code === 'missing' ? `${labelAt(issue.path)} is missing.` : `${labelAt(issue.path)}: ${issueWords(issue)}`;
