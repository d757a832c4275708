import type { CoverDesign, SegmentId } from '../../core/index.ts';
import { FlatPattern } from '../sheet/FlatPattern.tsx';
import { useTooledPattern } from '../sheet/useTooledPattern.ts';
import { lagging } from '../state/lagging.tsx';
import DevelopedStrip from './DevelopedStrip.tsx';
import UprightStrip from './UprightStrip.tsx';
import type { ZoneChoice } from './useZoneChoice.ts';
import './strip.css';

/** The wrap and the height laid out, to tune, and the pattern where the part in hand is lit. */
export default function StripsPlace({ zones }: { readonly zones: ZoneChoice }) {
  return (
    <div className="strips-place">
      <DevelopedStrip zones={zones} />
      <UprightStrip zones={zones} />
      <LitPattern highlight={zones.lit} />
    </div>
  );
}

interface PatternProps {
  readonly design: CoverDesign;
  readonly highlight: SegmentId | null;
}

const LitPattern = lagging(
  ({ design }) => ({ design }),
  function Pattern({ design, highlight }: PatternProps) {
    return <FlatPattern design={design} drawing={useTooledPattern(design)} highlight={highlight} />;
  },
);
