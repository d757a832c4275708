import { shareCovered } from '../../core/index.ts';
import { FigureField } from '../fields/FigureField.tsx';
import { useBench } from '../state/BenchContext.tsx';

/** Share of the board that the pockets cover; where their depth is given, it follows from that, to a whole percent. */
export function PocketShare() {
  const fromDepth = useBench(({ design: { job, pieces, needs } }) =>
    job.pockets.depth_mm === null ? null : Math.round(100 * shareCovered(pieces.pocketDepth, needs.thick)) / 100,
  );
  return fromDepth === null ? (
    <FigureField path="pockets.share" empty="default" insteadOf="pockets.depth_mm" />
  ) : (
    <FigureField path="pockets.share" empty="decided" decided={fromDepth} insteadOf="pockets.depth_mm" />
  );
}
