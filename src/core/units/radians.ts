/** An angle in radians. The brand exists only for the compiler: at run time it is a plain number. */
export type Radians = number & { readonly __unit: 'rad' };

/** Marks a plain number as radians. */
export const radians = (value: number): Radians => value as Radians;

export const radiansFromDegrees = (degrees: number): Radians => radians((degrees * Math.PI) / 180);

export const degreesFromRadians = (angle: Radians): number => (angle * 180) / Math.PI;
