import { type ZippableFile, zipSync } from 'fflate';

/** Bytes of a ZIP file's local header before the name (APPNOTE 4.3.7), and of an extra field before its data (4.5.1). */
const HEADER = 30;
const FIELD = 4;

/** The data of every file begins at a multiple of it (USDZ File Format Specification, Layout). */
const ALIGNMENT = 64;

/** Of no registered kind: readers skip it. */
const PADDING = 0x1986;

/** The earliest that ZIP can say, so that one cover always gives the same bytes. */
const NO_DATE = new Date(1980, 0, 1);

/**
 * Packs files as USDZ: a ZIP file without compression whose data are aligned (USDZ File Format Specification, OpenUSD).
 * @param files names and bytes; the first is the layer that a viewer opens
 */
export function usdzPackage(files: readonly (readonly [name: string, bytes: Uint8Array])[]): Uint8Array<ArrayBuffer> {
  let at = 0;
  const packed: Record<string, ZippableFile> = {};
  for (const [name, bytes] of files) {
    const before = at + HEADER + new TextEncoder().encode(name).length;
    const padding = (2 * ALIGNMENT - ((before + FIELD) % ALIGNMENT)) % ALIGNMENT;
    packed[name] = [bytes, { extra: { [PADDING]: new Uint8Array(padding) }, mtime: NO_DATE }];
    at = before + FIELD + padding + bytes.length;
  }
  return zipSync(packed, { level: 0 }) as Uint8Array<ArrayBuffer>;
}
