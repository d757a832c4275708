import {
  capital,
  colourWords,
  findFieldNote,
  isRecord,
  type Job,
  type LeatherName,
  type NewerFigure,
  type Printer,
} from '../../core/index.ts';
import { giveOrTake } from '../fields/doubtText.ts';
import { labelAt } from '../fields/issueWords.ts';

/** Figures of a leather that are better known now, each as `Outside bend ratio: 0.2, now 0.34`; the two ends of its weight are one. */
export function newerWords(
  figures: readonly NewerFigure[],
  piece: LeatherName,
  job: Job,
  print: Printer,
): readonly string[] {
  const ends = [`leather.${piece}.min_mm`, `leather.${piece}.max_mm`] as const;
  const isEnd = ({ path }: NewerFigure): boolean => path === ends[0] || path === ends[1];
  const lines = figures.filter((figure) => !isEnd(figure)).map((figure) => lineOf(figure, print));
  const { min_mm, max_mm } = job.leather[piece] ?? job.leather.outside;
  if (!figures.some(isEnd)) return lines;
  const [thin, thick] = [min_mm, max_mm].map((before, i) => {
    const after = figures.find(({ path }) => path === ends[i])?.after;
    return typeof after === 'number' ? after : before;
  }) as [number, number];
  return [`${capital(piece)} weight: ${print.weights(min_mm, max_mm)}, now ${print.weights(thin, thick)}`, ...lines];
}

function lineOf({ path, before, after }: NewerFigure, print: Printer): string {
  const input = path.startsWith('doubts.') ? path.slice('doubts.'.length) : null;
  const label = input === null ? labelAt(path) : `${labelAt(input)}, give or take`;
  const said = (value: unknown): string => (input === null ? plain(path, value, print) : doubt(input, value, print));
  return `${label}: ${said(before)}, now ${said(after)}`;
}

function plain(path: NewerFigure['path'], value: unknown, print: Printer): string {
  const note = findFieldNote(path);
  if (value === null || value === undefined) return 'as usual';
  if (path.endsWith('.colour')) return colourWords(String(value));
  if (typeof value !== 'number') return String(value);
  if (note?.unit === 'mm') return print.size(value);
  return note?.unit === '%' ? print.share(value, 2) : `${Number(value.toFixed(3))} ${note?.unit ?? ''}`.trim();
}

const doubt = (input: string, value: unknown, print: Printer): string =>
  isRecord(value) && typeof value.u === 'number' ? giveOrTake(input, value.u, print) : 'as usual';
