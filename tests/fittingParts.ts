import type { PartName } from '../src/core/solid/meshData.ts';

/** Parts that lie on the cover: the parts of cover and book are judged without them as well. */
export const FITTINGS: ReadonlySet<PartName> = new Set(['strap', 'fastening', 'buckleTab', 'penLoop', 'ribbons']);
