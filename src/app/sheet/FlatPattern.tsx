import { type CoverDesign, type Drawing, patternZone, type SegmentId } from '../../core/index.ts';
import { PatternSheet } from './PatternSheet.tsx';

interface FlatPatternProps {
  readonly design: CoverDesign;
  readonly drawing: Drawing;
  /** Stretch of the strip to light up on the outside. */
  readonly highlight: SegmentId | null;
}

/** The pattern as it lies when it is cut and as the template shows it: grain side up, so with the front at the right. */
export function FlatPattern({ design, drawing, highlight }: FlatPatternProps) {
  const lit = highlight === null ? null : patternZone(design, 'thick', highlight);
  return (
    <section aria-labelledby="flat-pattern">
      <h2 id="flat-pattern">Flat pattern</h2>
      <PatternSheet highest={520} drawing={drawing} lit={lit} />
      <p className="help">
        Grain side up, as the template and as it is cut: head at the top, front at the right. Long dashes: folds. Dots:
        seam, with every hole or slit. Short dashes: the boards. Chain line: middle of the spine.
      </p>
    </section>
  );
}
