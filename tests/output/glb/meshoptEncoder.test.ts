import fc from 'fast-check';
import { MeshoptDecoder } from 'meshoptimizer';
import { beforeAll, describe, expect, test } from 'vitest';
import { encodeGltfBuffer } from '../../../src/output/glb/meshoptEncoder.ts';
import { checkLaw } from '../../laws.ts';

beforeAll(() => MeshoptDecoder.ready);

/** What the format's own library makes of packed bytes (meshoptimizer, EXT_meshopt_compression). */
function unpacked(packed: Uint8Array, count: number, size: number, mode: string): Uint8Array {
  const bytes = new Uint8Array(count * size);
  MeshoptDecoder.decodeGltfBuffer(bytes, count, size, packed, mode);
  return bytes;
}

describe('packed attributes', () => {
  test('come back byte for byte', () => {
    const steps = fc.constantFrom(0, 1, 255, 3, 17, 128, 200);
    const element = fc.constantFrom(4, 8, 12, 16, 64);
    checkLaw(
      fc.property(
        element,
        fc.integer({ min: 1, max: 600 }),
        fc.array(steps, { minLength: 5, maxLength: 50 }),
        (size, count, runs) => {
          const bytes = new Uint8Array(count * size);
          let value = 0;
          bytes.forEach((_, i) => {
            value += runs[(i * 7 + (i >> 5)) % runs.length]!;
            bytes[i] = value;
          });
          expect(unpacked(encodeGltfBuffer(bytes, count, size, 'ATTRIBUTES'), count, size, 'ATTRIBUTES')).toEqual(
            bytes,
          );
        },
      ),
    );
  });

  test('that do not change take hardly any room', () => {
    expect(encodeGltfBuffer(new Uint8Array(16 * 1000).fill(9), 1000, 16, 'ATTRIBUTES').length).toBeLessThan(600);
  });
});

describe('packed triangles', () => {
  test('come back with the same corners in the same sense', () => {
    checkLaw(
      fc.property(fc.array(fc.tuple(fc.nat(90), fc.nat(90), fc.nat(90)), { minLength: 1, maxLength: 80 }), (rows) => {
        const seen = new Map<number, number>();
        const numbered = rows.flat().map((vertex) => {
          if (!seen.has(vertex)) seen.set(vertex, seen.size);
          return seen.get(vertex)!;
        });
        for (const indices of [Uint16Array.from(rows.flat()), Uint32Array.from(numbered)]) {
          const size = indices.BYTES_PER_ELEMENT;
          const packed = encodeGltfBuffer(new Uint8Array(indices.buffer), indices.length, size, 'TRIANGLES');
          const bytes = unpacked(packed, indices.length, size, 'TRIANGLES');
          const found = size === 2 ? new Uint16Array(bytes.buffer) : new Uint32Array(bytes.buffer);
          for (let t = 0; t < indices.length; t += 3) {
            const turns = [0, 1, 2].map((k) => [0, 1, 2].map((i) => indices[t + ((i + k) % 3)]).join());
            expect(turns).toContain([...found.subarray(t, t + 3)].join());
          }
        }
      }),
    );
  });
});
