// Masks of a picture: 1 for a cell that belongs, 0 for one that does not, row by row.

/** Cells within reach of a cell of the mask, along rows and columns, or of what lies beyond the picture. */
export function grown(mask: Uint8Array, width: number, height: number, by: number, isFromBeyond = false): Uint8Array {
  let now = mask;
  for (let round = 0; round < by; round++) {
    const before = now;
    now = Uint8Array.from(before, (value, i) => {
      const x = i % width;
      const isAtRim = x === 0 || x === width - 1 || i < width || i >= width * (height - 1);
      return value ||
        (isFromBeyond && isAtRim) ||
        (x > 0 && before[i - 1]) ||
        (x < width - 1 && before[i + 1]) ||
        (i >= width && before[i - width]) ||
        (i < width * (height - 1) && before[i + width])
        ? 1
        : 0;
    });
  }
  return now;
}

const turnedOver = (mask: Uint8Array): Uint8Array => mask.map((value) => 1 - value);
/** @param beyond what lies beyond the picture: 1 as if the mask went on there, 0 as if it ended */
export const eroded = (mask: Uint8Array, width: number, height: number, by: number, beyond: 0 | 1 = 1): Uint8Array =>
  turnedOver(grown(turnedOver(mask), width, height, by, beyond === 0));
export const opened = (mask: Uint8Array, width: number, height: number): Uint8Array =>
  grown(eroded(mask, width, height, 1), width, height, 1);

/** The connected parts of a mask, each by its cells. */
export function parts(mask: Uint8Array, width: number, height: number): number[][] {
  const isOpen = Uint8Array.from(mask);
  const found: number[][] = [];
  for (let start = 0; start < mask.length; start++) {
    if (!isOpen[start]) continue;
    isOpen[start] = 0;
    const part = [start];
    for (let k = 0; k < part.length; k++) {
      const i = part[k]!;
      const x = i % width;
      const beside = [
        x > 0 ? i - 1 : -1,
        x < width - 1 ? i + 1 : -1,
        i - width,
        i < width * (height - 1) ? i + width : -1,
      ];
      for (const next of beside)
        if (next >= 0 && isOpen[next]) {
          isOpen[next] = 0;
          part.push(next);
        }
    }
    found.push(part);
  }
  return found;
}

export function largest(mask: Uint8Array, width: number, height: number): Uint8Array {
  const only = new Uint8Array(mask.length);
  for (const i of parts(mask, width, height).sort((a, b) => b.length - a.length)[0] ?? []) only[i] = 1;
  return only;
}

/** The mask with what lies all round within it. */
export function filled(mask: Uint8Array, width: number, height: number): Uint8Array {
  const whole = Uint8Array.from(mask);
  for (const hole of parts(turnedOver(mask), width, height)) {
    const isAtRim = hole.some(
      (i) => i < width || i >= width * (height - 1) || i % width === 0 || i % width === width - 1,
    );
    if (!isAtRim) for (const i of hole) whole[i] = 1;
  }
  return whole;
}
