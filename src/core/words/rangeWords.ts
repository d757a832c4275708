/** Where in the weight range a leather is taken, to be followed by "of the leather". */
export const RANGE_WORDS = { thin: 'at the thin end', nominal: 'in the middle', thick: 'at the thick end' } as const;
