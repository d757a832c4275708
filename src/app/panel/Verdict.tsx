import { type Ref, useId } from 'react';
import { EXAMPLE_JOBS, type JobDocument, sentence } from '../../core/index.ts';
import { useBench, useDispatch } from '../state/BenchContext.tsx';
import { type Bench, trialsOf } from '../state/bench.ts';
import { addressOf } from '../state/place.ts';
import { FitSaid, Headline } from './Headline.tsx';
import { type OneThing, oneThing } from './oneThing.ts';

/** A job without the unit in which it is worked, which may be chosen before anything else. */
const besideUnits = ({ work: _, ...rest }: JobDocument): string => JSON.stringify(rest);

const EXAMPLE = besideUnits(EXAMPLE_JOBS[0].document);

/** Whether the example with which a first visit starts is open as it was. */
const isFirstVisit = ({ history: { document } }: Bench): boolean => besideUnits(document) === EXAMPLE;

interface VerdictProps {
  readonly words: Ref<HTMLElement>;
  /** Starts a new cover. */
  readonly start: () => void;
}

/** The whole fit in one sentence, what makes it unsure, and the one thing to do; read out whenever it changes. */
export function Verdict({ words, start }: VerdictProps) {
  const { verdict, state, headline, leastSure, differs } = useBench((bench) => {
    const { verdict, state, headline, doubt } = bench.report;
    return { verdict, state, headline, leastSure: doubt.leastSure, differs: trialsOf(bench)?.differs ?? '' };
  });
  const next = useBench(({ report }) => oneThing(report));
  const isFirst = useBench(isFirstVisit);
  return (
    <section ref={words} className="verdict" aria-label="The fit">
      <FitSaid verdict={verdict} state={state} headline={headline} leastSure={leastSure} differs={differs} />
      <p className="row next-thing not-printed">
        {isFirst ? (
          <>
            <button type="button" className="main" onClick={start}>
              A cover for your book
            </button>
            <span>This one is an example.</span>
          </>
        ) : (
          next !== null && <NextThing next={next} />
        )}
        {/* A remedy needs the room; “How sure” is a card too. */}
        {!isFirst && next?.kind === 'change' ? (
          <a className="link" href={addressOf('explore')}>
            Other ways
          </a>
        ) : (
          <button
            type="button"
            onClick={() => void import('../fields/Card.tsx').then(({ openCard }) => openCard('sure'))}
          >
            How sure
          </button>
        )}
      </p>
    </section>
  );
}

/** The one filled button. */
function NextThing({ next }: { readonly next: OneThing }) {
  const dispatch = useDispatch();
  const id = useId();
  if (next.kind === 'change')
    return (
      <>
        <button
          type="button"
          className="main"
          aria-describedby={id}
          onClick={() => dispatch({ type: 'edit', patches: next.patches })}
        >
          Make this change
        </button>
        <span id={id}>{next.words}</span>
      </>
    );
  return (
    <>
      <button
        type="button"
        className="main"
        aria-describedby={id}
        onClick={() => void import('../fields/goToField.ts').then(({ goToField }) => goToField(next.path))}
      >
        Measure next
      </button>
      <span id={id}>{sentence(next.words)}</span>
    </>
  );
}

/** The verdict in one line, on every place but the cover's own. */
export function VerdictBar() {
  const { verdict, state, headline } = useBench(({ report: { verdict, state, headline } }) => ({
    verdict,
    state,
    headline,
  }));
  return (
    <a className="verdict-bar" href={addressOf('cover')}>
      <Headline verdict={verdict} state={state} headline={headline} />
    </a>
  );
}
