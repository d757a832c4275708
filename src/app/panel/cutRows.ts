import type { Drawing, Printer } from '../../core/index.ts';

/** A line of a table of cut sizes. */
export interface CutRow {
  /** The piece, and how often it is cut where that is more than once. */
  readonly name: string;
  readonly size: string;
}

/** Every piece and every length that is cut, with its size: `380 mm × 236.5 mm`, `120 mm long`. */
export const cutRows = ({ pieces, lengths }: Drawing, print: Pick<Printer, 'size'>): readonly CutRow[] => [
  ...pieces.map(({ name, count, width, height }) => ({
    name: often(name, count),
    size: `${print.size(width)} × ${print.size(height)}`,
  })),
  ...lengths.map(({ name, count, sum }) => ({ name: often(name, count), size: `${print.size(sum.total)} long` })),
];

const often = (name: string, count: number): string => (count === 1 ? name : `${name}, cut ${count}`);
