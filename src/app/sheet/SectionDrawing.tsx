import type { ReactNode } from 'react';
import {
  type CoverDesign,
  coverSection,
  type FitAt,
  type Printer,
  RANGE_WORDS,
  type RangePoint,
} from '../../core/index.ts';
import { useBench, useLengths } from '../state/BenchContext.tsx';
import { SectionPicture } from './SectionPicture.tsx';

interface SectionDrawingProps {
  readonly design: CoverDesign;
  /** The fit in one sentence. */
  readonly headline: string;
  readonly point: RangePoint;
  /** Radians, 0 closed to pi flat. */
  readonly opening: number;
  /** Why it stands where the three-dimensional view should be. */
  readonly reason: ReactNode;
  /** It stands there for a moment only: neither words nor picture go into how the leather lies. */
  readonly isBrief: boolean;
}

/** Openings alike within this, radians, are one. */
const ALIKE = 1e-6;

/**
 * Book and cover cut across the spine, to scale; the leather by itself is dashed where its strip is solved and the book is as
 * closed as it goes. Stands in wherever the three-dimensional view cannot.
 */
export function SectionDrawing({ design, headline, point, opening, reason, isBrief }: SectionDrawingProps) {
  const lengths = useLengths();
  const { fit } = useBench(({ report }) => ({ fit: report.fit }));
  const section = coverSection(design, point, opening);
  const { strip } = fit[point];
  const { staysOpen } = design.fits[point];
  const tellsHow = !isBrief && staysOpen !== null && section.opening <= staysOpen + ALIKE;
  const lies = tellsHow && strip?.status === 'converged' ? strip : null;
  return (
    <figure className="section-drawing">
      <SectionPicture
        section={section}
        lies={lies?.section_mm ?? null}
        label={`Section across the spine. ${headline}`}
      />
      <figcaption>
        Section across the spine, to scale, {RANGE_WORDS[point]} of the leather
        {section.opening > opening + ALIKE && `, open ${lengths.angle(section.opening)}: it closes no further`}.{' '}
        <span className="section-more">
          {tellsHow && spareWords(design, fit[point], lengths)} {lies && LIES}
        </span>{' '}
        {reason}
      </figcaption>
    </figure>
  );
}

const LIES = 'Dashed: the leather as it will lie by itself.';

/** Where the spare wrap is in the picture, and where else it may be. */
function spareWords({ job }: CoverDesign, { closed, spare, strip }: FitAt, say: Pick<Printer, 'gap'>): string {
  if (!closed.closes) return '';
  const wrap = say.gap(closed.slack_mm);
  if (job.seating === 'spine') return `Drawn tight; ${wrap} of spare wrap lies behind the spine.`;
  const { front_mm: front, back_mm: back } = spare.pushedHome;
  const home = `${say.gap(Math.max(front, back))} of it at ${front === back ? 'each' : 'one'} fore-edge`;
  const held = strip?.spareAtForeEdge.held;
  return (
    `Pushed home: ${wrap} of spare wrap, ${home}.` +
    (held
      ? ` Let go, friction keeps up to ${say.gap(Math.max(held.front_mm, held.back_mm))} there; the rest goes behind the spine and off the boards.`
      : '')
  );
}
