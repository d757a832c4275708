import { useMemo } from 'react';
import { useCoverPicture } from '../customer/coverPicture.ts';
import { usePrintedPictures } from '../customer/usePrintedPictures.ts';
import CoverScene from '../scene/CoverScene.tsx';
import type { CoverSceneProps } from '../scene/sceneProps.ts';

/** The scene, with the picture of it that is printed. */
export default function PrintedScene(props: CoverSceneProps) {
  const picture = useCoverPicture();
  usePrintedPictures(useMemo(() => [picture], [picture]));
  return (
    <>
      <CoverScene {...props} pictureRef={picture.holdScene} />
      <img ref={picture.paper} className="stage-print" hidden alt={props.describe} />
    </>
  );
}
