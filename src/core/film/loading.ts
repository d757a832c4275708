import { TOLERANCE } from '../math/tolerance.ts';
import type { Movements } from './filmStep.ts';
import { ramp } from './ramp.ts';

/** How far each part of loading has gone, 0 to 1; the parts of one movement follow each other. */
export interface Loading {
  /** The book comes into view. */
  readonly arrived: number;
  /** First board from before its mouth to home. */
  readonly slidIn: number;
  /** Second board laid over onto its closed pocket. */
  readonly laidOver: number;
  /** Both boards bent back past flat, as a share of the loading angle. */
  readonly bent: number;
  /** Mouth of the second pocket lifted for the board. */
  readonly lifted: number;
  /** Both boards slid home, and flat. */
  readonly slidHome: number;
}

/** Where in its movement each part ends. Free choice. */
const ARRIVED = 0.15;
const LAID_OVER = 0.35;
const LIFTED = 0.2;

export const loadingAt = ({
  firstIn,
  bentBack,
  secondIn,
}: Pick<Movements, 'firstIn' | 'bentBack' | 'secondIn'>): Loading => ({
  arrived: ramp(firstIn, 0, ARRIVED),
  slidIn: ramp(firstIn, ARRIVED, 1),
  laidOver: ramp(bentBack, 0, LAID_OVER),
  bent: ramp(bentBack, LAID_OVER, 1),
  lifted: ramp(secondIn, 0, LIFTED),
  slidHome: ramp(secondIn, LIFTED, 1),
});

/** The value of a movement at which one of its parts has gone as far as `share`, by bisection. */
export function movementFor(share: number, part: (movement: number) => number): number {
  let [low, high] = [0, 1];
  while (high - low > TOLERANCE.ratio) {
    const middle = (low + high) / 2;
    if (part(middle) < share) low = middle;
    else high = middle;
  }
  return high;
}
