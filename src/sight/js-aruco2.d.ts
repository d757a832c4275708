// The package has no types of its own; what is used of it.
declare module 'js-aruco2' {
  /** In whole pixels. */
  type Corners = readonly { readonly x: number; readonly y: number }[];
  interface Image {
    readonly width: number;
    readonly height: number;
    readonly data: ArrayLike<number>;
  }
  const aruco: {
    readonly AR: {
      readonly Dictionary: new (name: string) => { readonly codeList: readonly string[] };
      readonly Detector: new (options: {
        readonly dictionaryName: string;
        readonly maxHammingDistance: number;
      }) => {
        findCandidates(contours: readonly Corners[], minSize: number, epsilon: number, minLength: number): Corners[];
        clockwiseCorners(candidates: readonly Corners[]): Corners[];
        notTooNear(candidates: readonly Corners[], minDistance: number): Corners[];
        /** Corners clockwise from the upper left of the mark as printed. */
        findMarkers(
          grey: Image,
          candidates: readonly Corners[],
          warpSize: number,
        ): { readonly id: number; readonly corners: Corners }[];
      };
    };
  };
  export default aruco;
}
declare module 'js-aruco2/src/cv.js' {
  import type { Corners, Image } from 'js-aruco2';

  const cv: { readonly CV: { findContours(binary: Image, work: Int32Array): Corners[] } };
  export default cv;
}
