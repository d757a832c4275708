import { useMemo } from 'react';
import { patternZone, type SegmentId } from '../../core/index.ts';
import CoverScene from '../scene/CoverScene.tsx';
import type { CoverSceneProps } from '../scene/sceneProps.ts';
import { useCoverPicture } from './coverPicture.ts';
import { usePrintedPictures } from './usePrintedPictures.ts';

type LitSceneProps = Omit<CoverSceneProps, 'highlight'> & {
  /** Stretch of the strip to highlight. */
  readonly highlight: SegmentId | null;
};

/** The scene with the part of the cover highlighted that belongs to a stretch of the strip, and its printed picture. */
export default function LitScene({ highlight, ...props }: LitSceneProps) {
  const { design, point } = props;
  const lit = useMemo(
    () => (highlight === null ? null : patternZone(design, point, highlight)),
    [design, point, highlight],
  );
  const picture = useCoverPicture();
  usePrintedPictures(useMemo(() => [picture], [picture]));
  return (
    <>
      <CoverScene {...props} highlight={lit} pictureRef={picture.holdScene} />
      <img ref={picture.paper} className="only-printed" hidden alt={props.describe} />
    </>
  );
}
