/** How far the two covers of the customer's sheet are open, radians: half open shows the pockets, boards and leather. */
export const OPENINGS = { closed: 0, open: (110 * Math.PI) / 180 } as const;
