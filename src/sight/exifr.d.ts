// The smaller build of the package, which has no types of its own: JPEG and HEIC, TIFF blocks.
declare module 'exifr/dist/lite.esm.mjs' {
  export function parse(
    bytes: Uint8Array,
    options: { readonly gps: false; readonly translateValues: false },
  ): Promise<Record<string, unknown> | undefined>;
}
