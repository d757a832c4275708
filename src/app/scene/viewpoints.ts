/** Where the scene can be looked at from, in the order of the keys 1 to 8. The first is the opening view. */
export const VIEWPOINTS = ['three-quarter', 'fore-edge', 'spine', 'head', 'tail', 'front', 'back', 'inside'] as const;

export type Viewpoint = (typeof VIEWPOINTS)[number];
