import { shareCovered } from '../../core/index.ts';
import { FigureField } from '../fields/FigureField.tsx';
import { useBench } from '../state/BenchContext.tsx';

/** Share of the board that the pockets cover; where their depth is given, it follows from that. */
export function PocketShare() {
  const fromDepth = useBench(({ design: { job, pieces, needs } }) =>
    job.pockets.depth_mm === null ? null : shareCovered(pieces.pocketDepth, needs.thick),
  );
  return fromDepth === null ? (
    <FigureField path="pockets.share" empty="default" insteadOf="pockets.depth_mm" />
  ) : (
    <FigureField path="pockets.share" empty="decided" decided={fromDepth} insteadOf="pockets.depth_mm" />
  );
}
