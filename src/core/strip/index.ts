// The strip solver as a library of its own. It imports nothing from outside this folder.
export { followStrip } from './followStrip.ts';
export { growOutline, type Obstacle } from './obstacle.ts';
export { createStripSolver, finerSolver, type StripSolver, solveStrip } from './solveStrip.ts';
export type { ClampEnd, Floor, FreeEnd, SlideEnd, StripEnd, StripLoad, StripProblem } from './stripProblem.ts';
export { type StripScale, stripScale } from './stripScale.ts';
export { type StripSettings, stripSettings } from './stripSettings.ts';
export type { EndReaction, StripContact, StripSolution, StripStatus } from './stripSolution.ts';
