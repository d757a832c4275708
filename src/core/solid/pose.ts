/** Where a cover that is let go comes to rest in the leather as the job has it, and the ends of what may be, radians. */
export interface RestRange {
  readonly opening: number;
  readonly least: number;
  readonly most: number;
}

/**
 * Where book and cover stand.
 *
 * `sequence` is a place on the film of making and loading (`filmSteps`), 0 the cut pieces to 1 at rest. `opening` is the
 * finished book on its own, in radians: 0 closed, pi flat.
 */
export type Pose =
  | {
      readonly kind: 'sequence';
      readonly at: number;
      /** Where the cover springs to once it is let go; without it the cover stays shut. */
      readonly rest?: RestRange | undefined;
    }
  | { readonly kind: 'opening'; readonly angle: number };
