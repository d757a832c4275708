import { type CoverDesign, coverSection, extent } from '../../core/index.ts';

interface StandingCoverProps {
  readonly design: CoverDesign;
  /** What it shows, in words. */
  readonly label: string;
}

/** px a millimetre, so that covers on one shelf compare; a very large one is drawn smaller. */
const SCALE = 0.5;
/** px at most. */
const HIGHEST = 170;
const WIDEST = 150;
/** Share of the spine's breadth that is seen from before the front board. */
const SEEN = 0.6;

/** A finished cover standing upright, as it is seen from before its front board, the spine at the left, to scale. */
export function StandingCover({ design, label }: StandingCoverProps) {
  const { job, made, needs } = design;
  const { outside } = coverSection(design, 'nominal', 0);
  const [front, spine, height] = [extent(outside, 0), SEEN * extent(outside, 1), made.outside.height];
  const width = front + spine;
  const scale = Math.min(SCALE, HIGHEST / height, WIDEST / width);
  const [side, end] = [needs.thick.foreEdge.margin, job.seam.edgeMargin_mm];
  return (
    <svg
      className="standing-cover"
      viewBox={`0 0 ${width} ${height}`}
      width={width * scale}
      height={height * scale}
      role="img"
      aria-label={label}
    >
      <rect className="back" width={spine} height={height} />
      <rect x={spine} width={front} height={height} />
      <path
        data-seam={job.seam.method}
        d={`M${spine} ${end}H${width - side}V${height - end}H${spine}`}
        strokeWidth={job.seam.method === 'lacing' ? end : 0.8}
        strokeDasharray={job.seam.method === 'lacing' ? '1.6 2.4' : '3 1.5'}
      />
    </svg>
  );
}
