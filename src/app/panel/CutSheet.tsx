import { useMemo } from 'react';
import { patternDrawing, type SegmentId } from '../../core/index.ts';
import { FlatPattern } from '../sheet/FlatPattern.tsx';
import { useBench } from '../state/BenchContext.tsx';
import { lagging } from '../state/lagging.tsx';
import { CutSizes } from './CutSizes.tsx';

interface CutSheetProps {
  readonly highlight: SegmentId | null;
}

/** What goes to the cutting mat: sizes with their sums, and the pattern. Fetched after the first paint. */
export default lagging(function CutSheet({ highlight }: CutSheetProps) {
  const { design } = useBench();
  const drawing = useMemo(() => patternDrawing(design), [design]);
  return (
    <>
      <CutSizes drawing={drawing} />
      <FlatPattern drawing={drawing} highlight={highlight} />
    </>
  );
});
