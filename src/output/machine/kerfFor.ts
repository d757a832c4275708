import { type KerfRow, type MachineProfile, sameLeather } from './machineProfile.ts';

/** The kerf that a machine's table gives, and how it was found there. */
export interface FoundKerf {
  readonly kerf_mm: number;
  /** Rows that it comes from: one, or the two that the thickness lies between. */
  readonly rows: readonly KerfRow[];
  /** `nearest` where the thickness lies outside the table. */
  readonly by: 'row' | 'between' | 'nearest';
}

/**
 * Kerf of a leather at a thickness: its row, or in proportion between the two rows that the thickness lies between, or that of the
 * nearest row where it lies outside them.
 * @param leather as named in the table; capitals do not count
 * @param thickness mm, above 0
 * @returns null where the table has no such leather: a kerf is never guessed from another
 */
export function kerfFor({ kerfs }: MachineProfile, leather: string, thickness: number): FoundKerf | null {
  const rows = kerfs.filter((row) => sameLeather(row.leather, leather)).sort((a, b) => a.thickness_mm - b.thickness_mm);
  const above = rows.find(({ thickness_mm }) => thickness_mm >= thickness);
  const below = rows.findLast(({ thickness_mm }) => thickness_mm <= thickness);
  const nearest = above ?? below;
  if (nearest === undefined) return null;
  if (above === undefined || below === undefined) return { kerf_mm: nearest.kerf_mm, rows: [nearest], by: 'nearest' };
  if (above === below) return { kerf_mm: above.kerf_mm, rows: [above], by: 'row' };
  const share = (thickness - below.thickness_mm) / (above.thickness_mm - below.thickness_mm);
  return { kerf_mm: below.kerf_mm + share * (above.kerf_mm - below.kerf_mm), rows: [below, above], by: 'between' };
}
