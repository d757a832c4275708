import type { Ref } from 'react';
import type { FitMark } from '../../../core/index.ts';
import { markWords } from './markWords.ts';

interface FitMarkOverlayProps {
  readonly ref: Ref<SVGSVGElement>;
  readonly marks: readonly FitMark[];
  readonly formatLength: (mm: number) => string;
}

/** Dimension lines and labels over the picture. Only their words are set here; `FitMarkProjector` moves them. */
export function FitMarkOverlay({ ref, marks, formatLength }: FitMarkOverlayProps) {
  return (
    <svg ref={ref} className="cover-scene-marks">
      <title>Fit marks</title>
      {marks.map((mark, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: head and tail are marked twice, always in one order
        <g key={i} data-edge={mark.edge} data-fit={mark.value < 0 ? 'overrun' : 'gap'}>
          <path className="leader" />
          <path className="casing" />
          <path className="extension" />
          <path className="dimension" />
          <path className="arrows" />
          <rect rx="3" />
          <text textAnchor="middle" dominantBaseline="central">
            {markWords(mark, formatLength)}
          </text>
        </g>
      ))}
    </svg>
  );
}
