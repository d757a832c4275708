import { useId } from 'react';
import { CALIPER_ERROR, EDGES, type ErrorSpread, type JobDocument } from '../../core/index.ts';
import { Choice } from '../fields/Choice.tsx';
import { useLengths } from '../state/BenchContext.tsx';
import { chanceAssumption, chanceWords } from './chanceWords.ts';
import { bareText, smallFigure } from './figure.ts';
import type { Answered } from './useExplored.ts';

interface MeasuringErrorsProps {
  readonly document: JobDocument;
  /** Measuring error, mm. */
  readonly error: number;
  /** True once no answer will come. */
  readonly isFailed: boolean;
  readonly answered: Answered<'errors'> | null;
  readonly spread: ErrorSpread;
  readonly onSpread: (spread: ErrorSpread) => void;
}

const SPREADS: readonly { readonly value: ErrorSpread; readonly label: string }[] = [
  { value: 'normal', label: 'mostly small' },
  { value: 'even', label: 'any size equally likely' },
];

const EDGE_WORDS = { closed: 'Fore-edge, closed', open: 'Fore-edge, open', head: 'Head', tail: 'Tail' };

/** Which measure matters most for this book, and how often the cover fits with the stated measuring error. */
export function MeasuringErrors({ document, error, isFailed, answered, spread, onSpread }: MeasuringErrorsProps) {
  const lengths = useLengths();
  const id = useId();
  const figure = smallFigure(lengths);
  const isOld = answered !== null && answered.question.document !== document;
  const most = answered?.answer.rows[0];
  const mostEdge = most && EDGES.reduce((worst, edge) => (most.shifts[edge] > most.shifts[worst] ? edge : worst));
  return (
    <section className="measuring-errors" aria-labelledby={`${id}-title`}>
      <h3 id={`${id}-title`}>If the measures are off</h3>
      {answered === null ? (
        <p className="help">{isFailed ? 'Not worked out.' : 'Being worked out.'}</p>
      ) : (
        <>
          <p className={isOld ? 'chance stale' : 'chance'} role="status">
            {isOld
              ? isFailed
                ? 'Not worked out for these measures.'
                : 'Being worked out again.'
              : chanceWords(answered.answer.chance)}
          </p>
          <p className="help">
            {chanceAssumption(
              answered.answer.chance,
              answered.question.spread,
              lengths.size(error),
              lengths.size(Math.min(error, CALIPER_ERROR)),
            )}
          </p>
          <Choice title="Errors" options={SPREADS} chosen={spread} choose={(value) => onSpread(value as ErrorSpread)} />
          {most !== undefined && mostEdge !== undefined && most.shifts[mostEdge] > 0 && (
            <p>
              Take most care with the <b>{most.measure.title.toLowerCase()}</b>: {lengths.size(most.measure.error)} off
              moves the gap at the {EDGE_WORDS[mostEdge].toLowerCase()}, by {figure.text(most.shifts[mostEdge])}.
            </p>
          )}
          <table className={isOld ? 'stale' : undefined} aria-busy={isOld}>
            <caption>How far each measure, off by its error, moves each gap, {figure.unit}</caption>
            <thead>
              <tr>
                <th scope="col">Measure</th>
                {EDGES.map((edge) => (
                  <th key={edge} scope="col">
                    {EDGE_WORDS[edge]}
                  </th>
                ))}
              </tr>
            </thead>
            <tbody>
              {answered.answer.rows.map(({ measure, rates, shifts }) => (
                <tr key={measure.id}>
                  <th scope="row">
                    {measure.title} <span className="help">± {lengths.size(measure.error)}</span>
                  </th>
                  {EDGES.map((edge) => (
                    <td key={edge}>
                      {Math.abs(rates[edge]) < 5e-4 ? (
                        '–'
                      ) : (
                        <>
                          ± {bareText(shifts[edge], figure)}{' '}
                          <span className="help">× {lengths.number(rates[edge], 2)}</span>
                        </>
                      )}
                    </td>
                  ))}
                </tr>
              ))}
            </tbody>
          </table>
          <p className="help">
            × 0.50: a measure 1 {figure.unit} larger changes the gap by 0.50 {figure.unit}; minus means less gap.
          </p>
        </>
      )}
    </section>
  );
}
