/** A point or direction of the plane. */
export type Vec2 = readonly [x: number, y: number];

export const subtract = (a: Vec2, b: Vec2): Vec2 => [a[0] - b[0], a[1] - b[1]];
/** a + k b */
export const addScaled = (a: Vec2, b: Vec2, k: number): Vec2 => [a[0] + k * b[0], a[1] + k * b[1]];
export const dot = (a: Vec2, b: Vec2): number => a[0] * b[0] + a[1] * b[1];
export const cross = (a: Vec2, b: Vec2): number => a[0] * b[1] - a[1] * b[0];
export const distance = (a: Vec2, b: Vec2): number => Math.hypot(a[0] - b[0], a[1] - b[1]);
/** Unit vector at an angle counterclockwise from +x, radians. */
export const heading = (angle: number): Vec2 => [Math.cos(angle), Math.sin(angle)];
/** The vector turned a quarter counterclockwise. */
export const leftOf = (a: Vec2): Vec2 => [-a[1], a[0]];
