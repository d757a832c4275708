import { type CoverDesign, coverSection, type RangePoint } from '../../core/index.ts';
import { useLengths } from '../state/BenchContext.tsx';
import { SectionPicture } from './SectionPicture.tsx';

interface SectionDrawingProps {
  readonly design: CoverDesign;
  /** The fit in one sentence. */
  readonly headline: string;
  readonly point: RangePoint;
  /** Radians, 0 closed to pi flat. */
  readonly opening: number;
  /** Why it stands where the three-dimensional view should be. */
  readonly reason: string;
}

/** Book and cover cut across the spine, to scale. Stands in wherever the three-dimensional view cannot. */
export function SectionDrawing({ design, headline, point, opening, reason }: SectionDrawingProps) {
  const lengths = useLengths();
  const section = coverSection(design, point, opening);
  return (
    <figure className="section-drawing">
      <SectionPicture section={section} label={`Section across the spine. ${headline}`} />
      <figcaption>
        Section across the spine, to scale, {point} leather
        {section.opening > opening + 1e-6 && `, open ${lengths.angle(section.opening)}: it closes no further`}. {reason}
      </figcaption>
    </figure>
  );
}
