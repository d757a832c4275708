import type { PatternSource } from '../../core/index.ts';
import type { TitleBlock } from '../../output/titleBlock.ts';
import { today } from '../../output/today.ts';
import type { BenchStore } from './bench.ts';

/** Address of this page without the fragment that says where in it one is. */
export const pageAddress = (): string => {
  const { origin, pathname, search } = window.location;
  return `${origin}${pathname}${search}`;
};

/**
 * The title block of a sheet of the open job, as that stands now.
 * @param own what the sheet is drawn from where it is not the job's own design, and what its square code holds where not the whole job
 */
export async function sheetBlock(
  { getState }: BenchStore,
  sheet: string,
  { source, fragment }: { readonly source?: PatternSource; readonly fragment?: string | null } = {},
): Promise<TitleBlock> {
  const { titleBlock } = await import('../../output/titleBlock.ts');
  const { history, design } = getState();
  const { job, document } = history.good;
  return titleBlock({
    sheet,
    job,
    design: source ?? design,
    document,
    fragment,
    date: today(),
    address: pageAddress(),
  });
}
