import { useState } from 'react';
import { extent, type Vec2 } from '../../../core/index.ts';
import type { HidePicture } from './pictureScale.ts';

/** Pictures since the page was loaded, by job and leather. */
const kept = new Map<string, HidePicture>();

/** Width at which a picture without a scale is shown where nothing is outlined, mm. */
const UNSCALED = 1000;

/** A picture as it comes in; one by a sheet has its scale. */
export type AddedPicture = Pick<HidePicture, 'address' | 'width' | 'height' | 'name' | 'sheet' | 'seen'> &
  Partial<Pick<HidePicture, 'mm'>>;

/** The picture under the drawing of one leather, for as long as the page is open. */
export function useHidePicture(of: string) {
  const [picture, setPicture] = useState<HidePicture | null>(kept.get(of) ?? null);
  const putPicture = (next: HidePicture | null): void => {
    if (picture !== null && picture.address !== next?.address) URL.revokeObjectURL(picture.address);
    if (next === null) kept.delete(of);
    else kept.set(of, next);
    setPicture(next);
  };
  const addPicture = (
    { width, height, mm: known, ...rest }: AddedPicture,
    outline: readonly Vec2[] | null,
  ): HidePicture => {
    const mm = known ?? (outline === null ? UNSCALED : extent(outline, 0)) / width;
    const [x, y] = [width * mm, height * mm];
    const added: HidePicture = {
      ...rest,
      width,
      height,
      mm,
      isScaled: known !== undefined,
      points: [
        [0.2 * x, 0.5 * y],
        [0.8 * x, 0.5 * y],
      ],
      off: [Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY],
    };
    putPicture(added);
    return added;
  };
  return { picture, putPicture, addPicture };
}
