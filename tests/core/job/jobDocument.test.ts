import { describe, expect, test } from 'vitest';
import { type Patch, patched, valueAt } from '../../../src/core/job/jobDocument.ts';

describe('a patch', () => {
  const document = { name: 'Tide ledger', book: { width_mm: 165, spine: { shape: 'flat' } }, ease: { head_mm: 1 } };

  test('puts a value at its path and leaves the original as it was', () => {
    const before = structuredClone(document);
    expect(valueAt(patched(document, [{ path: 'book.width_mm', value: 170 }]), 'book.width_mm')).toBe(170);
    expect(document).toEqual(before);
  });

  test('shares the parts that it does not touch', () => {
    expect(patched(document, [{ path: 'book.width_mm', value: 170 }]).ease).toBe(document.ease);
  });

  test('makes the objects on the way where the document lacks them', () => {
    expect(patched({}, [{ path: 'pockets.depth_mm', value: 60 }])).toEqual({ pockets: { depth_mm: 60 } });
  });

  test('of undefined takes the field out, and makes nothing on the way to a field that is not there', () => {
    expect(patched(document, [{ path: 'book.spine.shape', value: undefined }]).book).toEqual({
      width_mm: 165,
      spine: {},
    });
    expect(patched({}, [{ path: 'pockets.depth_mm', value: undefined }])).toEqual({});
  });

  test('of null is a value of its own', () => {
    expect(patched({}, [{ path: 'pockets.depth_mm', value: null }])).toEqual({ pockets: { depth_mm: null } });
  });

  test('comes after the one before it', () => {
    const patches: readonly Patch[] = [
      { path: 'seam.method', value: 'lacing' },
      { path: 'seam.method', value: 'stitching' },
    ];
    expect(valueAt(patched({}, patches), 'seam.method')).toBe('stitching');
  });
});

test('a path that the document does not reach gives undefined', () => {
  expect(valueAt({ book: 3 }, 'book.spine.shape')).toBeUndefined();
  expect(valueAt(null, 'book')).toBeUndefined();
});
