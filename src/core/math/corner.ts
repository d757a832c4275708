/** How a corner is taken off: `size` is the radius, or the leg of the cut along each edge. 0 leaves the corner square. */
export interface Corner {
  readonly style: 'rounded' | 'clipped';
  readonly size: number;
}

export const SQUARE: Corner = { style: 'rounded', size: 0 };
