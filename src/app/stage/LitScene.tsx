import { useCallback, useMemo } from 'react';
import { patternZone, type SegmentId } from '../../core/index.ts';
import CoverScene from '../scene/CoverScene.tsx';
import { holdScene } from '../scene/heldScene.ts';
import type { PictureHandle } from '../scene/PictureTaker.tsx';
import type { CoverSceneProps } from '../scene/sceneProps.ts';

export type LitSceneProps = Omit<CoverSceneProps, 'highlight'> & {
  /** Stretch of the strip to highlight. */
  readonly highlight: SegmentId | null;
};

/** The scene with the part of the cover highlighted that belongs to a stretch of the strip; it can be printed. */
export default function LitScene({ highlight, ...props }: LitSceneProps) {
  const { design, point } = props;
  const lit = useMemo(
    () => (highlight === null ? null : patternZone(design, point, highlight)),
    [design, point, highlight],
  );
  const hold = useCallback((scene: PictureHandle | null) => holdScene(scene, design), [design]);
  return <CoverScene {...props} highlight={lit} pictureRef={hold} />;
}
