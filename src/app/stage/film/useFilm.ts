import { useCallback, useEffect, useState } from 'react';
import { type CoverDesign, type FilmStep, filmStepAt, filmSteps, type RestRange } from '../../../core/index.ts';
import { useReducedMotion } from '../../scene/camera/useReducedMotion.ts';
import type { StageState } from '../stageState.ts';

/** Running time of the whole film, and how long a step stands still where the system asks for less motion, seconds. */
const RUNNING = 45;
const STANDING = 2.5;

export interface Film {
  readonly steps: readonly FilmStep[];
  /** The step that is shown, its place among the steps, and the place on the film. */
  readonly step: FilmStep;
  readonly index: number;
  readonly at: number;
  readonly isPlaying: boolean;
  /** Shows a place, and stands still there. */
  show(at: number): void;
  /** Shows a step from its beginning, or of its neighbours the one before or after. */
  showStep(index: number): void;
  /** Plays on, from the beginning where it has come to its end, or stands still. */
  play(): void;
}

/**
 * The film of the making as the stage shows it. It stops at its end and where a step does not go.
 * @param shown the pose of the stage; a book that is opened stands at the end of the film
 * @param rest where the cover springs to at its end
 * @param setStage takes the next place
 */
export function useFilm(
  design: CoverDesign,
  { pose, point }: Pick<StageState, 'pose' | 'point'>,
  rest: RestRange | undefined,
  setStage: (change: Partial<StageState>) => void,
): Film {
  const steps = filmSteps(design, point);
  const [isPlaying, setIsPlaying] = useState(false);
  const isStill = useReducedMotion();
  const at = pose.kind === 'sequence' ? pose.at : 1;
  const step = filmStepAt(steps, at);
  const index = steps.indexOf(step);
  const end = steps.find(({ jam }) => jam !== null)?.jam?.at ?? 1;
  const put = useCallback(
    (place: number): void => {
      const next = Math.max(0, Math.min(1, place));
      setStage({ pose: { kind: 'sequence', at: next, rest }, film: told(steps, next) });
    },
    [steps, rest, setStage],
  );

  // What is said of the place goes with the job that it is a place in.
  // biome-ignore lint/correctness/useExhaustiveDependencies: only another film is told anew
  useEffect(() => {
    if (pose.kind === 'sequence') put(pose.at);
  }, [steps, rest]);

  useEffect(() => {
    if (!isPlaying) return;
    if (at >= end) {
      setIsPlaying(false);
      return;
    }
    if (isStill) {
      const next = setTimeout(() => put(Math.min(end, steps[index + 1] ? steps[index]!.to : 1)), 1000 * STANDING);
      return () => clearTimeout(next);
    }
    const start = performance.now();
    const frame = requestAnimationFrame((now) => put(Math.min(end, at + Math.max(0, now - start) / (1000 * RUNNING))));
    return () => cancelAnimationFrame(frame);
  }, [isPlaying, isStill, at, end, index, steps, put]);

  const show = useCallback(
    (place: number): void => {
      setIsPlaying(false);
      put(place);
    },
    [put],
  );
  return {
    steps,
    step,
    index,
    at,
    isPlaying,
    show,
    showStep: (wanted) => show(steps[Math.max(0, Math.min(steps.length - 1, wanted))]!.from),
    play: () => {
      if (!isPlaying && at >= end) put(0);
      setIsPlaying(!isPlaying);
    },
  };
}

/** What the rest of the stage needs to know of a place: its step in words, and how far the book is open, radians. */
function told(steps: readonly FilmStep[], at: number): NonNullable<StageState['film']> {
  const closing = steps.find(({ id }) => id === 'close')!;
  const share = Math.max(0, Math.min(1, (at - closing.from) / (closing.to - closing.from)));
  return { words: filmStepAt(steps, at).name.toLowerCase(), opening: Math.PI * (1 - share) };
}
