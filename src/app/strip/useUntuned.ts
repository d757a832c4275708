import { useMemo } from 'react';
import type { CoverDesign } from '../../core/index.ts';
import { useBench } from '../state/BenchContext.tsx';
import { untunedDesign } from './untunedDesign.ts';

/** The cover with nothing tuned, to be seen behind the one on the bench; null while they are the same. */
export function useUntuned(): CoverDesign | null {
  const { history, design } = useBench();
  const { document } = history.good;
  return useMemo(() => untunedDesign(document, design), [document, design]);
}
