import type { CutSum, Drawing } from '../../core/index.ts';

/** The sums of a pattern, each once: without those of a single part and without repeated heights. */
export function writtenOut({ pieces, lengths }: Drawing): readonly { readonly name: string; readonly sum: CutSum }[] {
  const known = new Set<string>();
  const all = [
    ...pieces.flatMap(({ name, sums }) => sums.map((sum) => ({ name: `${name}, ${sum.dimension}`, sum }))),
    ...lengths.map(({ name, sum }) => ({ name: `${name}, ${sum.dimension}`, sum })),
  ];
  return all.filter(({ sum }) => {
    const key = JSON.stringify(sum);
    const isNew = sum.parts.length > 1 && !known.has(key);
    known.add(key);
    return isNew;
  });
}
