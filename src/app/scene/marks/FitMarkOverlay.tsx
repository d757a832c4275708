import type { Ref } from 'react';
import { EDGE_NAMES, type FitMark } from '../../../core/index.ts';
import type { AreaLabel } from './areaLabels.ts';

interface FitMarkOverlayProps {
  readonly ref: Ref<SVGSVGElement>;
  readonly marks: readonly FitMark[];
  readonly areas: readonly AreaLabel[];
  readonly formatLength: (mm: number) => string;
}

/** Dimension lines and labels over the picture, fit marks first, then areas. Only their words are set here; `FitMarkProjector` moves them. */
export function FitMarkOverlay({ ref, marks, areas, formatLength }: FitMarkOverlayProps) {
  return (
    <svg ref={ref} className="cover-scene-marks">
      <title>Fit marks</title>
      {marks.map((mark, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: head and tail are marked twice, always in one order
        <g key={i} data-edge={mark.edge} data-fit={mark.value < 0 ? 'overrun' : 'gap'}>
          <Mark words={markWords(mark, formatLength)} />
        </g>
      ))}
      {areas.map(({ words }) => (
        <g key={words}>
          <Mark words={words} />
        </g>
      ))}
    </svg>
  );
}

/** What `FitMarkProjector` moves, in the order in which it finds them. */
const Mark = ({ words }: { readonly words: string }) => (
  <>
    <path className="leader" />
    <path className="casing" />
    <path className="dimension" />
    <rect rx="3" />
    <text textAnchor="middle" dominantBaseline="central">
      {words}
    </text>
  </>
);

const PLACES: Record<FitMark['edge'], string> = {
  ...EDGE_NAMES,
  spine: 'spine',
  frontBoard: 'front board',
  backBoard: 'back board',
  gape: 'fore-edges',
};

/** Word for what a mark measures. */
function measured({ edge, value }: FitMark): string {
  if (edge === 'gape') return 'stand open';
  if (edge === 'frontBoard' || edge === 'backBoard') return 'leather off by';
  if (value < 0) return 'overrun';
  return edge === 'spine' ? 'spare wrap' : 'gap';
}

const SPARE = { pushedHome: ', pushed home', asItLies: ', as it will lie' } as const;

/** Label of a mark, such as `head: gap 1.2 mm`; the sign is in the word. A gap at a fore-edge says where the spare wrap is. */
const markWords = (mark: FitMark, formatLength: (mm: number) => string): string =>
  `${PLACES[mark.edge]}: ${measured(mark)} ${formatLength(mark.value)}${mark.spare ? SPARE[mark.spare] : ''}${mark.isLoose && mark.value > 0 ? ', too loose' : ''}`;
