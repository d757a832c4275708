import { useMemo } from 'react';
import { patternZone, type SegmentId } from '../../core/index.ts';
import type { CoverSceneProps } from '../scene/sceneProps.ts';
import PrintedScene from './PrintedScene.tsx';

type LitSceneProps = Omit<CoverSceneProps, 'highlight'> & {
  /** Stretch of the strip to light up. */
  readonly highlight: SegmentId | null;
};

/** The scene with the part of the cover lit that belongs to a stretch of the strip. */
export default function LitScene({ highlight, ...props }: LitSceneProps) {
  const { design, point } = props;
  const lit = useMemo(
    () => (highlight === null ? null : patternZone(design, point, highlight)),
    [design, point, highlight],
  );
  return <PrintedScene {...props} highlight={lit} />;
}
