/**
 * Where book and cover stand.
 *
 * `sequence` runs the whole making: 0 flat pattern on the bench, then pockets laid on, book opened and set in, folding
 * round the spine, to 1 closed. `opening` is the finished book on its own, in radians: 0 closed, pi flat.
 */
export type Pose =
  | { readonly kind: 'sequence'; readonly at: number }
  | { readonly kind: 'opening'; readonly angle: number };

/** Stages of the sequence and where each begins, for a caption and for stops on the control. */
export const SEQUENCE_STAGES = [
  { id: 'pattern', from: 0 },
  { id: 'pockets', from: 0.15 },
  { id: 'setIn', from: 0.35 },
  { id: 'fold', from: 0.65 },
  { id: 'closed', from: 1 },
] as const;
