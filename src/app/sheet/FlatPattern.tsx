import { useMemo } from 'react';
import type { Drawing } from '../../core/pattern/drawing.ts';
import { mirroredDrawing } from '../../core/pattern/mirrorDrawing.ts';
import { useBench } from '../state/BenchContext.tsx';
import { patternZone } from '../strip/patternZone.ts';
import { PatternSheet } from './PatternSheet.tsx';

interface FlatPatternProps {
  readonly drawing: Drawing;
  /** Stretch of the strip to light up on the outside. */
  readonly highlight: string | null;
}

/** The pattern as it lies under the strip: flesh side up, so that both begin with the front. */
export function FlatPattern({ drawing, highlight }: FlatPatternProps) {
  const { design } = useBench();
  const seen = useMemo(() => mirroredDrawing(drawing), [drawing]);
  const lit = highlight === null ? null : patternZone(design, 'thick', highlight);
  return (
    <section aria-labelledby="flat-pattern">
      <h2 id="flat-pattern">Flat pattern</h2>
      <PatternSheet drawing={seen} lit={lit} />
      <p className="help">
        Grain side down, head at the top, front at the left as in the strip. Long dashes: folds. Dots: seam, with every
        hole or slit. Short dashes: the boards. Chain line: middle of the spine.
      </p>
    </section>
  );
}
