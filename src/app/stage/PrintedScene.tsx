import { useMemo } from 'react';
import CoverScene from '../scene/CoverScene.tsx';
import type { CoverSceneProps } from '../scene/sceneProps.ts';
import { useCoverPicture } from './coverPicture.ts';
import { usePrintedPictures } from './usePrintedPictures.ts';

/** The scene, with the picture of it that is printed. */
export default function PrintedScene(props: CoverSceneProps) {
  const picture = useCoverPicture();
  usePrintedPictures(useMemo(() => [picture], [picture]));
  return (
    <>
      <CoverScene {...props} pictureRef={picture.holdScene} />
      <img ref={picture.paper} className="only-printed" hidden alt={props.describe} />
    </>
  );
}
