import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { FACE_CHOICES, loadFace } from '../../../src/artwork/faces/loadFace.ts';
import type { LetterOutline } from '../../../src/core/index.ts';
import { checkLaw } from '../../laws.ts';

const points = ({ polylines }: LetterOutline) => polylines.flat();

describe.each(FACE_CHOICES)('the face $title', ({ id }) => {
  test('has its capital height as its unit, its base line at 0, and every text begins at 0', async () => {
    const face = await loadFace(id);
    const { polylines, width } = face.outline(id === 'uncial' ? 'E' : 'H');
    expect(polylines.length).toBeGreaterThan(0);
    expect(Math.max(...points({ polylines, width }).map(([, y]) => y))).toBeCloseTo(1, 9);
    const text = face.outline('Tide');
    const xs = points(text).map(([x]) => x);
    expect(Math.min(...xs)).toBe(0);
    expect(text.width).toBe(Math.max(...xs));
  });

  test('has most capitals within a fifth of its capital height', async () => {
    const face = await loadFace(id);
    const tops = [...'ABCDEFGHIKLMNOPRSTUVXYZ'].map((letter) =>
      Math.max(...points(face.outline(letter)).map(([, y]) => y)),
    );
    expect(tops.filter((top) => Math.abs(top - 1) < 0.2).length).toBeGreaterThan(tops.length * 0.8);
  });

  test('draws all letters of English, and of German, French and Spanish', async () => {
    const face = await loadFace(id);
    const letters =
      'ABCDEFGHIJKLMNOPQRSTUVWXYZ abcdefghijklmnopqrstuvwxyz 0123456789 .,:;!?&()\'"-’ ÄÖÜäöüß Ééèêàçîôû Ññ¿¡';
    expect(face.lacks(letters)).toEqual([]);
    for (const letter of letters.replaceAll(' ', '')) expect(face.outline(letter).polylines, letter).not.toEqual([]);
  });

  test('names the characters that it lacks, each once, and draws the rest as without them', async () => {
    const face = await loadFace(id);
    expect(face.lacks('A漢A𠀀漢')).toEqual(['漢', '𠀀']);
    expect(face.outline('A漢B')).toEqual(face.outline('AB'));
    expect(face.outline('漢')).toEqual({ polylines: [], width: 0 });
    expect(face.outline('  ')).toEqual({ polylines: [], width: 0 });
  });

  test('draws any text in finite numbers, and closed unless it is of strokes', async () => {
    const face = await loadFace(id);
    checkLaw(
      fc.property(fc.string({ unit: 'grapheme', maxLength: 30 }), (text) => {
        const { polylines, width } = face.outline(text);
        expect(Number.isFinite(width)).toBe(true);
        for (const line of polylines) {
          expect(line.length).toBeGreaterThan(1);
          expect(line.flat().every(Number.isFinite)).toBe(true);
          if (!face.isStroke) expect(line.at(-1)).toEqual(line[0]);
        }
      }),
      { cost: 4 },
    );
  });
});

test('an unknown face is the first one', async () => {
  expect((await loadFace('')).id).toBe('serif');
  expect((await loadFace('toString')).id).toBe('serif');
});

test('the serif is kerned: AV stands closer than A and V one after the other', async () => {
  const face = await loadFace('serif');
  const alone = face.outline('AH').width + face.outline('HV').width - face.outline('HH').width;
  expect(face.outline('AV').width).toBeLessThan(alone - 0.05);
});

test('Hershey Sans by hand: A is of three strokes, its bar a third of its height up', async () => {
  // Coordinates of the published font: apex 14 units over the bar at 7 of 21 units of capital height.
  const { polylines } = (await loadFace('singleLine')).outline('A');
  expect(polylines).toHaveLength(3);
  const [from, to] = polylines[2]!;
  expect(from![1]).toBe(to![1]);
  expect(from![1]).toBeCloseTo(1 / 3, 2);
});

test('single strokes cover Latin of Poland and Vietnam, Greek and Cyrillic, and name what they lack', async () => {
  const { lacks, outline } = await loadFace('singleLine');
  for (const text of [
    'Zażółć gęślą jaźń',
    'Tiếng Việt, đường',
    'Ξενοδοχείο της Ώρας',
    'Съешь ещё этих мягких французских булок, Й й',
    'їжак і Łódź',
  ])
    expect([text, lacks(text)]).toEqual([text, []]);
  expect(lacks('Aæ漢B')).toEqual(['æ', '漢']);
  // A mark stands over its letter, off it, and takes the place of its dot.
  const height = (text: string) =>
    Math.max(
      ...outline(text)
        .polylines.flat()
        .map(([, y]) => y),
    );
  expect(height('ć')).toBeGreaterThan(height('c') + 0.1);
  expect(outline('ĩ').polylines.length).toBe(outline('i').polylines.length);
  expect(outline('ą').polylines.length).toBe(outline('a').polylines.length + 1);
  expect(
    Math.min(
      ...outline('ą')
        .polylines.flat()
        .map(([, y]) => y),
    ),
  ).toBeLessThan(-0.1);
});
