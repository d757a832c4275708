/**
 * Where book and cover stand.
 *
 * `sequence` is a place on the film of making and loading (`filmSteps`), 0 the cut pieces to 1 at rest. `opening` is the
 * finished book on its own, in radians: 0 closed, pi flat.
 */
export type Pose =
  | { readonly kind: 'sequence'; readonly at: number }
  | { readonly kind: 'opening'; readonly angle: number };
