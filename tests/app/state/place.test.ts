import { expect, test } from 'vitest';
import { addressOf, PLACES, placeAt } from '../../../src/app/state/place.ts';

test('every place is found again at its address, with its part', () => {
  for (const { id } of PLACES) {
    expect(placeAt(addressOf(id))).toEqual({ id, part: '' });
    expect(placeAt(addressOf(id, 'template'))).toEqual({ id, part: 'template' });
  }
});

test.each(['', '#', '#nowhere', '#job=eNq', '#Cover'])(
  'the fragment “%s” names no place, so it is the cover',
  (fragment) => {
    expect(placeAt(fragment)).toEqual({ id: 'cover', part: '' });
  },
);
