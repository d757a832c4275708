import { expect, test } from 'vitest';
import { insetsOf } from '../../../src/app/stage/useInsets.ts';

/** The stage at 1024 x 768 px, with the words of the verdict over it and a caption of two lines below. */
const picture = { top: 52, bottom: 768, left: 0, right: 672 };
const words = { top: 52, bottom: 256, left: 0, right: 672 };
const controls = { top: 604, bottom: 768, left: 0, right: 672 };

test('the work is kept clear of the verdict and of the controls in a window of 1024 x 768 px', () => {
  expect(insetsOf(picture, words, controls)).toEqual({ top: 204, right: 0, bottom: 164, left: 0 });
});

test('words lie over the work where less than two fifths of a low picture would be left', () => {
  expect(insetsOf({ ...picture, bottom: 560 }, words, { ...controls, top: 450, bottom: 560 })).toMatchObject({
    top: 0,
  });
});

test('words beside the picture, or above it, take nothing of it', () => {
  expect(insetsOf(picture, { ...words, left: -400, right: 0 }, controls)).toMatchObject({ top: 0 });
  expect(insetsOf(picture, { ...words, top: 0, bottom: 52 }, controls)).toMatchObject({ top: 0 });
});
