import type { CoverDesign } from '../fold/coverDesign.ts';
import { fittingsStep, type StepId, workOrder } from '../job/workOrder.ts';
import type { RangePoint } from '../leather/leatherModel.ts';
import { remembered } from '../math/remembered.ts';
import { type Jam, jamOf } from './filmJam.ts';
import type { FilmId, FilmJam, FilmStep, Movement, Movements } from './filmStep.ts';
import { movementFor } from './loading.ts';
import { ramp } from './ramp.ts';

/** Length of each step on the film, in shares of the shortest. Free choice: hands and leather have to be followed. */
const LENGTHS: Readonly<Record<FilmId, number>> = {
  cut: 1,
  edges: 1,
  tool: 1,
  punch: 1,
  line: 1.5,
  fittings: 1.5,
  assemble: 2,
  stitch: 4,
  lace: 4,
  finish: 1,
  firstBoard: 3,
  secondBoard: 5,
  close: 4,
  rest: 1.5,
};

/** What moves in a step. */
const MOVES: Readonly<Record<FilmId, readonly Movement[]>> = {
  cut: [],
  edges: ['bevelled'],
  tool: ['tooled'],
  punch: ['punched'],
  line: ['lined'],
  fittings: ['fitted'],
  assemble: ['lined', 'joined'],
  stitch: ['sewn'],
  lace: ['sewn'],
  finish: ['burnished'],
  firstBoard: ['firstIn'],
  secondBoard: ['bentBack', 'secondIn'],
  close: ['closed', 'fastened'],
  rest: ['rested'],
};

/** Whether a step of the order of work is seen on the film. */
const isSeen = (id: StepId): id is StepId & FilmId => id in LENGTHS;

/**
 * The film of a cover, in the job's own order of work: what is seen of each step, and then loading and closing.
 * @param point thin end, middle or thick end of the leathers
 */
export const filmSteps = remembered((design: CoverDesign, point: RangePoint): readonly FilmStep[] => {
  const { job } = design;
  const { pocket, staysOpen } = design.fits[point];
  type Bare = Omit<FilmStep, 'from' | 'to' | 'jam'>;
  const work: Bare[] = workOrder(job).flatMap(({ id, name, cautions }) => {
    if (!isSeen(id)) return [];
    const step: Bare = { id, work: id, name, cautions, figure: null };
    const fitted = id === 'assemble' ? fittingsStep(job) : null;
    return fitted === null ? [step] : [{ id: 'fittings', work: 'fittings', ...fitted, figure: null }, step];
  });
  const hands: Bare[] = [
    { id: 'firstBoard', work: 'load', name: 'Slide the first board in', cautions: [], figure: null },
    {
      id: 'secondBoard',
      work: 'load',
      name: 'Bend the boards back, slide the second in',
      cautions: [],
      figure: { words: 'each board bent back', unit: 'rad', value: pocket.loadingAngle },
    },
    {
      id: 'close',
      work: 'close',
      name: 'Close and press',
      cautions: [],
      figure: staysOpen === null || staysOpen === 0 ? null : { words: 'stays open', unit: 'rad', value: staysOpen },
    },
    { id: 'rest', work: 'close', name: 'Let go', cautions: [], figure: null },
  ];
  const all = [...work, ...hands];
  const whole = all.reduce((sum, { id }) => sum + LENGTHS[id], 0);
  let at = 0;
  const steps = all.map((step, i): FilmStep => {
    const from = at / whole;
    at += LENGTHS[step.id];
    return { ...step, from, to: i === all.length - 1 ? 1 : at / whole, jam: null };
  });
  const jam = jamOf(design, point);
  return jam === null ? steps : steps.map((step) => withJam(step, jam));
});

/** The step with the jam that it comes to, if it is the one. */
function withJam(step: FilmStep, { movement, value, ...jam }: Jam): FilmStep {
  if (!MOVES[step.id].includes(movement)) return step;
  const share = movementFor(value, (way) => movementsAt([step], step.from + (step.to - step.from) * way)[movement]);
  return { ...step, jam: { ...jam, at: step.from + (step.to - step.from) * share } };
}

/** Where the film stops for good; null where all goes. */
export const jamIn = (steps: readonly FilmStep[]): FilmJam | null => steps.find(({ jam }) => jam !== null)?.jam ?? null;

/** The step that a place on the film belongs to. */
export const filmStepAt = (steps: readonly FilmStep[], at: number): FilmStep =>
  steps.findLast(({ from }) => at >= from) ?? steps[0]!;

/** A cover that is finished and at rest. */
export const ALL_DONE: Movements = {
  punched: 1,
  bevelled: 1,
  burnished: 1,
  tooled: 1,
  lined: 1,
  fitted: 1,
  joined: 1,
  sewn: 1,
  firstIn: 1,
  bentBack: 1,
  secondIn: 1,
  closed: 1,
  fastened: 1,
  rested: 1,
};

/** How far each movement has gone at a place on the film, 0 to 1; the movements of one step follow each other. */
export function movementsAt(steps: readonly FilmStep[], at: number): Movements {
  const movements: Record<Movement, number> = { ...ALL_DONE };
  for (const { id, from, to } of [...steps].reverse())
    MOVES[id].forEach((movement, i, { length }) => {
      const share = (to - from) / length;
      // What two steps could do is done by the first.
      movements[movement] = ramp(at, from + i * share, from + (i + 1) * share);
    });
  return movements;
}
