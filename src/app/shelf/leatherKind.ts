import { openLeather } from '../../core/index.ts';
import type { ShelfKind } from './shelfKind.ts';

export const LEATHERS: ShelfKind = {
  records: 'leathers',
  versions: 'leatherVersions',
  noun: 'leather',
  untitled: 'Untitled leather',
  // By the jobs that took it.
  isNamedById: true,
  open: openLeather,
  // Another hide of the kind: what was read of the first, and made of it, is its own.
  copied: ({ covers: _c, tests: _t, callipered_mm: _m, left_dm2: _l, ...bought }) => bought,
};
