import { useId } from 'react';
import { chanceWords, GIVE_OR_TAKE, type Printer, type ReportTrials } from '../../core/index.ts';
import { WithTerm } from '../fields/Term.tsx';
import { useLengths } from '../state/BenchContext.tsx';

interface TrialsProps {
  /** True once no answer will come. */
  readonly isFailed: boolean;
  /** Of the open job; null until they are made. */
  readonly trials: ReportTrials | null;
}

/** How often the cover fits when every input is drawn from its doubt, beside the chance that the verdict goes by. */
export function Trials({ isFailed, trials }: TrialsProps) {
  const id = useId();
  const lengths = useLengths();
  const words = (): string => {
    if (trials === null) return isFailed ? 'Not worked out.' : 'Being worked out.';
    const { draws, chance } = trials;
    return `In ${inThousands(draws)} trials it closes in ${chanceWords(chance.closes)} and fits in ${chanceWords(chance.fits)}.`;
  };
  return (
    <section className="trials" aria-labelledby={`${id}-title`}>
      <h3 id={`${id}-title`}>
        <WithTerm text="By trials" />
      </h3>
      <p role="status" className="chance" aria-busy={!isFailed && trials === null}>
        {words()}
      </p>
      {trials !== null && <Beside trials={trials} lengths={lengths} />}
      <p className="help">
        Every measure and every figure of the leather is drawn from its doubt, the same draws each time.
      </p>
    </section>
  );
}

/** A whole number with commas between thousands; the browser's own formatter takes 60 ms to load. */
const inThousands = (count: number): string => String(count).replace(/\B(?=(\d{3})+$)/g, ',');

const NAMES = { foreEdge: 'Fore-edges', head: 'Head', tail: 'Tail', flat: 'Lying flat', held: 'Pockets' } as const;

/** Where the trials say something else than the verdict, or than the spread that it is worked out from. */
function Beside({ trials, lengths }: { readonly trials: ReportTrials; readonly lengths: Printer }) {
  const edges = (Object.keys(NAMES) as (keyof typeof NAMES)[]).filter((name) => trials.nonLinear.includes(name));
  return (
    <>
      {trials.differs !== '' && <p>{trials.differs}</p>}
      {edges.map((name) => (
        <p key={name}>
          {NAMES[name]}: the quick reckoning misses the spread by over 10 %. “How sure” uses the trials' figure, give or
          take {lengths.small(GIVE_OR_TAKE * trials.edges[name].u_mm, 1)}.
        </p>
      ))}
    </>
  );
}
