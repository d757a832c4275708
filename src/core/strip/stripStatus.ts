/**
 * How a solve ended. Only `converged` is a shape to trust.
 *
 * stalled: no step lowers the energy; iterationCap: Newton ran out; contactOpen: the multiplier passes ran out with a gap
 * left; looped: the strip has thrown a loop on its way, a balance of far higher energy; notFinite: the shape degenerated;
 * badInput: the problem itself is wrong, and `message` says where.
 */
export type StripStatus =
  | 'converged'
  | 'stalled'
  | 'iterationCap'
  | 'contactOpen'
  | 'looped'
  | 'notFinite'
  | 'badInput';
