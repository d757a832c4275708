import type { Term } from './term.ts';

/** Terms whose meaning is the help of a field: apart, so that the schema of the job does not bring the whole vocabulary. */
export const FIELD_TERMS = {
  'bend back': {
    meaning: 'How far past flat the boards can be bent back while the second one is slipped in.',
    not: ['fold-back', 'foldback'],
    shown: 'open.boards',
  },
  'edge margin': {
    meaning: 'From the cut edge to the seam.',
    plural: 'edge margins',
    not: ['seam margin', 'seam allowance', 'stitch line'],
    shown: 'edge.margin',
  },
  'extra length at the joints': {
    meaning: 'What each joint takes up beyond the wrap of the closed book when it lies flat.',
    not: ['joint dip'],
    shown: 'open.joints',
  },
  pitch: {
    meaning: 'From one hole or slit of the seam to the next.',
    plural: 'pitches',
    not: ['hole spacing', 'stitch spacing', 'stitch length'],
    shown: 'pattern.pitch',
  },
  rise: {
    meaning: 'How far a rounded spine stands out beyond the straight line between the boards.',
    not: ['sagitta', 'height of the arc'],
    shown: 'spine.rise',
  },
  square: {
    meaning: 'How far a board stands out beyond the pages.',
    not: ['board overhang', 'board margin'],
    shown: 'spine.pages',
  },
} as const satisfies Readonly<Record<string, Term>>;
