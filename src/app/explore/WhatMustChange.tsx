import { useId } from 'react';
import { type FitTarget, isWanting, type JobDocument, type Report } from '../../core/index.ts';
import { useDispatch, useLengths } from '../state/BenchContext.tsx';
import { fieldFigure } from './figure.ts';
import { changeWords, noChangeWords } from './mustChangeWords.ts';
import type { Answered } from './useExplored.ts';

interface WhatMustChangeProps {
  readonly document: JobDocument;
  readonly checks: Report['checks'];
  /** True once no answer will come. */
  readonly isFailed: boolean;
  readonly answered: Answered<'changes'> | null;
  readonly target: FitTarget;
  readonly onTarget: (target: FitTarget) => void;
}

/** The smallest change of each field alone that makes the cover fit, each with a button that makes it. */
export function WhatMustChange({ document, checks, isFailed, answered, target, onTarget }: WhatMustChangeProps) {
  const dispatch = useDispatch();
  const lengths = useLengths();
  const id = useId();
  const wanting = checks.filter(({ verdict }) => isWanting(verdict));
  const rows = answered?.answer ?? [];
  const changes = rows.flatMap(({ field, outcome }) => (outcome.status === 'change' ? [{ field, outcome }] : []));
  const unable = rows.flatMap(({ field, outcome }) => (outcome.status === 'none' ? [{ field, outcome }] : []));
  const isOld = answered?.question.document !== document || answered.question.target !== target;
  return (
    <section className="must-change" aria-labelledby={`${id}-title`}>
      <h3 id={`${id}-title`}>What must change</h3>
      {wanting.length === 0 ? (
        <p className="help">Nothing: every check fits over the whole weight range.</p>
      ) : (
        <>
          <p className="row explore-pick">
            <label htmlFor={`${id}-target`}>so that this fits</label>
            <select
              id={`${id}-target`}
              value={target}
              onChange={({ target: { value } }) => onTarget(wanting.find((check) => check.id === value)?.id ?? 'all')}
            >
              <option value="all">every check</option>
              {wanting.map((check) => (
                <option key={check.id} value={check.id}>
                  {check.title.toLowerCase()}: {check.state}
                </option>
              ))}
            </select>
          </p>
          <p className="help" role="status">
            {isOld
              ? isFailed
                ? 'Not worked out.'
                : 'Being worked out.'
              : changes.length === 0
                ? 'No single change does it.'
                : 'Each alone is enough; the smallest first.'}
          </p>
          <ol aria-busy={isOld && !isFailed} className={isOld ? 'stale' : undefined}>
            {changes.map(({ field, outcome }) => {
              const words = changeWords(field, outcome, fieldFigure(field, lengths));
              return (
                <li key={field.id} className="row">
                  <span>{words}</span>
                  <button
                    type="button"
                    disabled={isOld}
                    onClick={() => dispatch({ type: 'edit', patches: outcome.changes })}
                  >
                    Make this change<span className="only-heard">: {words}</span>
                  </button>
                </li>
              );
            })}
          </ol>
          {!isOld && unable.length > 0 && (
            <details>
              <summary>Not enough alone</summary>
              <ul className="help">
                {unable.map(({ field, outcome }) => (
                  <li key={field.id}>{noChangeWords(field, outcome, fieldFigure(field, lengths))}</li>
                ))}
              </ul>
            </details>
          )}
        </>
      )}
    </section>
  );
}
