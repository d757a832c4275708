import { useId, useState } from 'react';
import { useStore } from 'zustand/react';
import {
  fieldNote,
  GIVE_OR_TAKE,
  type JobPath,
  listed,
  photographPatches,
  type SceneTrouble,
  valueAt,
} from '../../core/index.ts';
import { useBench, useBenchStore, useLengths } from '../state/BenchContext.tsx';
import { addressOf } from '../state/place.ts';
import { goToLookedAt } from './LookedAt.tsx';
import type { FoundBook, SolvedScene } from './photographQuestions.ts';
import { type Position, photographs, type Shot } from './photographs.ts';
import { TROUBLE_WORDS } from './photographWords.ts';
import type { Readings } from './readings.ts';
import { type Measured, toBeLookedAt } from './useMeasuredBook.ts';

/** A misfit above this says that something moved or a corner is wrong. An assumption of this project. */
const MUCH = 2;
/** So many marks that do not fit are no chance. An assumption of this project. */
const MANY = 3;

/** What the photographs say of the book beside what the job says now, and the button that takes it into the job. */
export function MeasuresStep({ measured, readings }: { readonly measured: Measured; readonly readings: Readings }) {
  const { found, isWorking, failure } = measured;
  const store = useBenchStore();
  const print = useLengths();
  const job = useBench(({ history }) => history.good.job);
  const shots = useStore(photographs, (state) => state.shots);
  const [taken, setTaken] = useState<string | null>(null);
  const waitingId = useId();
  if (failure !== null) return <p className="issue">The book could not be measured: {failure}</p>;
  if (found === null)
    return (
      <p className="help" role="status">
        {isWorking
          ? 'The book is being measured.'
          : 'Width, height and thickness stand here once the four corners are placed.'}
      </p>
    );
  const { measures } = found;
  const off = (u: number): string => print.small(GIVE_OR_TAKE * u);
  const toLook = toBeLookedAt({ shots });
  const waiting =
    measures.length === 0
      ? 'There is no measure to take.'
      : toLook.length > 0
        ? `First look at the corners in ${named(toLook, shots)}.`
        : isWorking
          ? 'The book is being measured.'
          : null;
  const take = (): void => {
    if (waiting !== null) return;
    const { dispatch, history } = store.getState();
    const patches = photographPatches(history.good.job, found, readings.ruler);
    dispatch({ type: 'settle' });
    dispatch({
      type: 'edit',
      patches,
      typed: Object.fromEntries(patches.map(({ path }) => [path, undefined])),
    });
    dispatch({ type: 'settle' });
    setTaken(JSON.stringify(measures));
  };
  return (
    <div className="photograph-measures" aria-busy={isWorking}>
      {measures.length > 0 && (
        <div className="measures-found">
          <table>
            <caption>The book by photograph</caption>
            <thead>
              <tr>
                <th scope="col">Measure</th>
                <th scope="col">Found</th>
                <th scope="col">Give or take</th>
                <th scope="col">of it the print</th>
                <th scope="col">In the job now</th>
              </tr>
            </thead>
            <tbody>
              {measures.map(({ path, value, u, uPrint }) => {
                const now = valueAt(job, path);
                return (
                  <tr key={path}>
                    <th scope="row">{fieldNote(path as JobPath).title}</th>
                    <td>{print.length(value)}</td>
                    <td>{off(u)}</td>
                    <td>{off(uPrint)}</td>
                    <td>{typeof now === 'number' ? print.size(now) : 'none'}</td>
                  </tr>
                );
              })}
            </tbody>
          </table>
          <p className="help">19 in 20 measures are no further off than that.</p>
        </div>
      )}
      <ul className="photograph-notes">
        {notesOn(found, readings, print.length).map((words) => (
          <li key={words}>{words}</li>
        ))}
      </ul>
      <div className="measures-taken">
        <button
          type="button"
          className="main"
          aria-disabled={waiting !== null}
          aria-describedby={waitingId}
          onClick={take}
        >
          Take into the job
        </button>
        <p>
          <span id={waitingId}>{waiting}</span>{' '}
          {toLook.length > 0 && (
            <button type="button" className="quiet" onClick={() => goToLookedAt(toLook[0]!.id)}>
              Go to the first
            </button>
          )}
        </p>
        <p role="status">
          {taken === JSON.stringify(measures) && (
            <>
              Taken, with how far each may be off. Undo brings the old measures back.{' '}
              <a className="link" href={addressOf('cover')}>
                See the cover
              </a>
            </>
          )}
        </p>
      </div>
    </div>
  );
}

/** Photographs by their numbers and positions, in words. */
const named = (some: readonly Shot[], shots: readonly Shot[]): string =>
  (['lying', 'standing'] as const)
    .flatMap((position) => {
      const own = shots.filter((shot) => shot.position === position);
      const numbers = own.flatMap((shot, i) => (some.includes(shot) ? [String(i + 1)] : []));
      if (numbers.length === 0) return [];
      return [`${numbers.length === 1 ? 'photograph' : 'photographs'} ${listed(numbers)} of the book ${position}`];
    })
    .join('; ');

/** What the maker should know of the measures before taking them. */
function notesOn(found: FoundBook, { ruler, print }: Readings, length: (value: number) => string): string[] {
  const { paper, shots } = photographs.getState();
  const { outOfSquare, swell } = found;
  const isClear = ({ value, u }: { readonly value: number; readonly u: number }): boolean =>
    Math.abs(value) > GIVE_OR_TAKE * u;
  return [
    ...(['lying', 'standing'] as const).flatMap((position) =>
      sceneNotes(found[position], position, shots.filter((shot) => shot.position === position).length),
    ),
    ...(ruler === ''
      ? [
          paper === null
            ? 'The print is not checked: its lengths may be 2 % off, and so may these. Measure both bars of the sheet.'
            : `The ${paper} sheet is not measured: papers differ by some millimetres. Measure both its sides.`,
        ]
      : print.across === null || print.along === null
        ? ['Only one length of the sheet is measured: the other may differ a little.']
        : []),
    ...(found.measures.some(({ path, u }) => path === 'book.thickness_mm' && u > 1)
      ? ['The photographs tell little of the thickness. Type it, or take one more from a lower angle.']
      : []),
    ...(outOfSquare !== null && isClear(outOfSquare)
      ? [`The board is out of square: its diagonals differ by ${length(Math.abs(outOfSquare.value))}.`]
      : []),
    ...(swell !== null && isClear(swell)
      ? [
          `The book is ${length(Math.abs(swell.value))} ${swell.value > 0 ? 'thicker' : 'thinner'} at the spine than at the fore-edge.`,
        ]
      : []),
  ];
}

function sceneNotes(scene: SolvedScene | SceneTrouble['code'] | null, position: Position, count: number): string[] {
  if (scene === null) return [];
  if (typeof scene === 'string') return [TROUBLE_WORDS[scene]];
  const loose = scene.views.filter((view) => view === null).length;
  return [
    ...(scene.misfit > MUCH
      ? [
          `The photographs of the book ${position} contradict each other. Look at each corner under the loupe; pages must not move between photographs.`,
        ]
      : []),
    ...(scene.doubtful >= MANY
      ? [`${scene.doubtful} marks do not fit the others and count little: is a page curled?`]
      : []),
    ...(loose > 0
      ? [
          `${loose === 1 ? 'One photograph shows' : `${loose} photographs show`} no page that the others show too, and does not count.`,
        ]
      : []),
    ...(count === 1
      ? [`One photograph of the book ${position} is little: with three the give or take is half as large.`]
      : []),
  ];
}

/** Whether anything is there to be measured. */
export const useHasShots = (position: Position): boolean =>
  useStore(photographs, (state) => state.shots.some((shot) => shot.position === position));
