import { comparedCover, type StockLeather } from '../../../core/index.ts';
import { gapWords } from '../../sheet/gapWords.ts';
import { useLengths } from '../../state/BenchContext.tsx';

interface LeatherCoversProps {
  readonly leather: StockLeather;
  readonly change: (covers: StockLeather['covers']) => void;
}

/** The finished covers that were kept with a leather, and whether each counts. */
export function LeatherCovers({ leather: { name, covers }, change }: LeatherCoversProps) {
  const lengths = useLengths();
  const bore = covers.filter(({ cracked }) => cracked === false).flatMap(({ strain }) => strain ?? []);
  const cracked = covers.filter((each) => each.cracked === true).flatMap(({ strain }) => strain ?? []);
  return (
    <section className="leather-knowledge" aria-labelledby="covers-of-leather">
      <h3 id="covers-of-leather">Covers made of it</h3>
      {covers.length === 0 && (
        <p className="help">
          None yet. Type how a finished cover came out in the workbench, under “How it came out”. Then let it teach this
          leather.
        </p>
      )}
      <ul className="job-rows">
        {covers.map((cover) => (
          <li key={cover.job} className="row">
            <label>
              <input
                type="checkbox"
                checked={cover.counts}
                onChange={({ target: { checked } }) =>
                  change(covers.map((each) => (each === cover ? { ...cover, counts: checked } : each)))
                }
              />
              {cover.name}
            </label>
            <span className="help">
              {[
                cover.day,
                `worked ${cover.worked}`,
                ...comparedCover(cover, name).map(
                  ({ of, measured, predicted }) =>
                    `${of}: ${gapWords(measured, lengths)}, foretold ${gapWords(predicted, lengths)}`,
                ),
                cover.weekLater_deg === null
                  ? null
                  : `${lengths.degrees(cover.weekLater_deg, 'nearest')} open after a week`,
              ]
                .filter((words) => words !== null)
                .join('; ')}
            </span>
            <button type="button" className="quiet" onClick={() => change(covers.filter((each) => each !== cover))}>
              Take out<span className="only-heard"> {cover.name}</span>
            </button>
          </li>
        ))}
      </ul>
      {covers.length > 0 && (
        <p className="help">Only covers that are ticked teach. What is known follows at once, both ways.</p>
      )}
      {bore.length > 0 && <p>Its grain bore a stretch of {lengths.share(Math.max(...bore))} at the folds.</p>}
      {cracked.length > 0 && <p>It cracked at {lengths.share(Math.min(...cracked))}.</p>}
    </section>
  );
}
