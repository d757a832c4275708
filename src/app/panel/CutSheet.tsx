import { useMemo } from 'react';
import { type CoverDesign, patternDrawing, type SegmentId } from '../../core/index.ts';
import { FlatPattern } from '../sheet/FlatPattern.tsx';
import { lagging } from '../state/lagging.tsx';
import { CutSizes } from './CutSizes.tsx';

interface CutSheetProps {
  readonly design: CoverDesign;
  readonly highlight: SegmentId | null;
}

/** The cut sizes with their sums, and the pattern. Fetched after the first paint. */
function CutSheet({ design, highlight }: CutSheetProps) {
  const drawing = useMemo(() => patternDrawing(design), [design]);
  return (
    <>
      <CutSizes design={design} drawing={drawing} />
      <FlatPattern design={design} drawing={drawing} highlight={highlight} />
    </>
  );
}

export default lagging(({ design }) => ({ design }), CutSheet);
