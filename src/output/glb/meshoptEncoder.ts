/** Elements in a group; groups are packed one by one. */
const GROUP = 16;

/** Most bytes and elements in a block. */
const BLOCK = { bytes: 8192, elements: 256 } as const;

/**
 * Packs a buffer view for EXT_meshopt_compression (Khronos Group, glTF 2.0 vendor extension, appendix A). The library of that
 * format packs by WebAssembly, which the page's content security policy does not let run; every reader can unpack this.
 * @param mode `ATTRIBUTES` (mode 0) or `TRIANGLES` (mode 1; a triangle may come back with another corner first)
 */
export function encodeGltfBuffer(source: Uint8Array, count: number, size: number, mode: string): Uint8Array {
  if (mode === 'ATTRIBUTES') return attributes(source, count, size);
  if (mode !== 'TRIANGLES') throw new Error(`No packing for ${mode}.`);
  const indices = size === 2 ? Uint16Array : Uint32Array;
  return triangles(new indices(source.slice().buffer));
}

const zigzagByte = (delta: number): number => {
  const byte = delta & 255;
  return (byte & 128 ? ~(byte << 1) : byte << 1) & 255;
};

function attributes(source: Uint8Array, count: number, size: number): Uint8Array {
  const most = Math.min(Math.floor(BLOCK.bytes / size) & ~(GROUP - 1), BLOCK.elements);
  const out: number[] = [0xa0];
  for (let from = 0; from < count; from += most) {
    const elements = Math.min(most, count - from);
    const groups = Math.ceil(elements / GROUP);
    for (let k = 0; k < size; k++) {
      const deltas = new Uint8Array(groups * GROUP);
      for (let i = 0; i < elements; i++) {
        const at = from + i;
        // The first element is the baseline itself.
        deltas[i] = zigzagByte(source[at * size + k]! - source[Math.max(0, at - 1) * size + k]!);
      }
      const header = out.length;
      for (let i = 0; i < groups; i += 4) out.push(0);
      for (let g = 0; g < groups; g++) {
        const group = deltas.subarray(g * GROUP, (g + 1) * GROUP);
        const packed = [[], withSentinels(group, 2), withSentinels(group, 4), [...group]];
        const kind = group.every((delta) => delta === 0) ? 0 : smallest(packed);
        out[header + (g >> 2)]! |= kind << (2 * (g & 3));
        out.push(...packed[kind]!);
      }
    }
  }
  const tail = Math.max(size, 32);
  for (let i = size; i < tail; i++) out.push(0);
  out.push(...source.subarray(0, size));
  return Uint8Array.from(out);
}

/** The shortest of the packings 1 to 3. */
const smallest = (packed: readonly (readonly number[])[]): number => {
  const lengths = packed.slice(1).map(({ length }) => length);
  return 1 + lengths.indexOf(Math.min(...lengths));
};

/** A group in fields of 2 or 4 bits, the first highest; a full field stands for a byte that follows them. */
function withSentinels(group: Uint8Array, bits: 2 | 4): number[] {
  const full = (1 << bits) - 1;
  const fields = Array<number>((GROUP * bits) / 8).fill(0);
  const bytes: number[] = [];
  group.forEach((delta, i) => {
    const at = i * bits;
    fields[at >> 3]! |= Math.min(delta, full) << (8 - bits - (at & 7));
    if (delta >= full) bytes.push(delta);
  });
  return [...fields, ...bytes];
}

/** Codes of a triangle whose first corner, or none, is the next new vertex; a corner's nibble: new, or written out. */
const CODE = { allNew: 0xf0, firstNew: 0xfe, none: 0xff } as const;
const NIBBLE = { next: 0, written: 0xf } as const;

function triangles(indices: Uint16Array | Uint32Array): Uint8Array {
  const codes: number[] = [];
  const data: number[] = [];
  let [next, last] = [0, 0];
  const write = (index: number): void => {
    const delta = index - last;
    last = index;
    let value = (delta < 0 ? ~(delta << 1) : delta << 1) >>> 0;
    for (; value > 127; value >>>= 7) data.push((value & 127) | 128);
    data.push(value);
  };
  for (let t = 0; t < indices.length; t += 3) {
    const corners = [...indices.subarray(t, t + 3)];
    const first = Math.max(0, corners.indexOf(next));
    const [a, b, c] = [0, 1, 2].map((k) => corners[(first + k) % 3]!) as [number, number, number];
    if (a !== next) {
      codes.push(CODE.none);
      data.push((NIBBLE.written << 4) | NIBBLE.written);
      for (const corner of [a, b, c]) write(corner);
      continue;
    }
    next++;
    const isNew = [b, c].map((corner) => {
      if (corner !== next) return false;
      next++;
      return true;
    });
    codes.push(isNew[0] && isNew[1] ? CODE.allNew : CODE.firstNew);
    if (isNew[0] && isNew[1]) continue;
    const [second, third] = isNew.map((fresh) => (fresh ? NIBBLE.next : NIBBLE.written));
    data.push((second! << 4) | third!);
    if (!isNew[0]) write(b);
    if (!isNew[1]) write(c);
  }
  // The table's first entry, 0, is the code of three new corners.
  return Uint8Array.from([0xe1, ...codes, ...data, ...Array<number>(16).fill(0)]);
}
