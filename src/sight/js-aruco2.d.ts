// The package has no types of its own; what is used of it.
declare module 'js-aruco2' {
  interface FoundMark {
    readonly id: number;
    /** Clockwise from the upper left of the mark as printed, in whole pixels. */
    readonly corners: readonly { readonly x: number; readonly y: number }[];
  }
  const aruco: {
    readonly AR: {
      readonly Dictionary: new (name: string) => { readonly codeList: readonly string[] };
      readonly Detector: new (options: {
        readonly dictionaryName: string;
        readonly maxHammingDistance: number;
      }) => {
        detect(picture: {
          readonly width: number;
          readonly height: number;
          readonly data: ArrayLike<number>;
        }): FoundMark[];
      };
    };
  };
  export default aruco;
}
