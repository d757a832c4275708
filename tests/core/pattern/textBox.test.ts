import { expect, test } from 'vitest';
import { CAPITAL, TAIL, textBox, textWidth } from '../../../src/core/pattern/textBox.ts';
import * as published from '../../output/wordsBox.ts';

test('the widths of letters, their capitals and tails are those of Helvetica as a PDF library carries them', () => {
  expect([CAPITAL, TAIL]).toEqual([published.CAPITAL, published.TAIL]);
  for (let code = 0x20; code < 0x7f; code++) {
    const letter = String.fromCharCode(code);
    expect([letter, textWidth(letter, 1)]).toEqual([
      letter,
      expect.closeTo(published.helvetica.widthOfTextAtSize(letter, 1), 9),
    ]);
  }
});

test('the box of words set upward lies to the left of their base line', () => {
  const words = { kind: 'text', at: [10, 20], height: 10, rotation: Math.PI / 2, align: 'start', text: 'HH' } as const;
  const { x, y, width, height } = textBox(words);
  expect([x, x + width, y, y + height]).toEqual(
    [10 - 7.18, 10 + 2.07, 20, 20 + 14.44].map((value) => expect.closeTo(value, 9)),
  );
});
