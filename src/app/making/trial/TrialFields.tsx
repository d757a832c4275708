import { Assumptions } from '../../fields/Assumptions.tsx';
import { Choice } from '../../fields/Choice.tsx';
import { FigureField } from '../../fields/FigureField.tsx';
import { useFieldIssues, useWritten } from '../../fields/fieldState.ts';
import { useBench, useDispatch } from '../../state/BenchContext.tsx';
import { cardOf } from '../cardOf.ts';
import { NewCard } from './NewCard.tsx';

const CLOSES = [
  { value: 'unsaid', label: 'not tried' },
  { value: 'closes', label: 'closes' },
  { value: 'open', label: 'stays open' },
];

const CLOSES_VALUE: Readonly<Record<string, boolean | undefined>> = { closes: true, open: false };

const AGAIN = [
  'mockup.again.spine_mm',
  'mockup.again.width_mm',
  'mockup.again.rise_mm',
  'mockup.again.height_mm',
] as const;

/** The card, what it showed on the book, and what was measured again after it. */
export function TrialFields() {
  const job = useBench(({ design }) => design.job);
  const dispatch = useDispatch();
  const issues = useFieldIssues('mockup.readings.closes');
  const { outside } = cardOf(job).pieces;
  const closes = useWritten('mockup.readings.closes');
  const chosen = closes === true ? 'closes' : closes === false ? 'open' : 'unsaid';
  return (
    <>
      <section aria-labelledby="trial-card">
        <h3 id="trial-card">The card</h3>
        <FigureField path="mockup.card.thickness_mm" empty="default" />
        <FigureField path="mockup.card.cutWidth_mm" empty="decided" decided={outside.width} />
        <FigureField path="mockup.card.cutHeight_mm" empty="decided" decided={outside.height} />
        <NewCard />
        <Assumptions title="Assumed of the card">
          <FigureField path="mockup.card.neutral" empty="default" />
          <FigureField path="mockup.card.bendRatio" empty="default" />
        </Assumptions>
      </section>
      <section aria-labelledby="trial-readings">
        <h3 id="trial-readings">Closing, and how sure</h3>
        <Choice
          path="mockup.readings.closes"
          title="The card"
          options={CLOSES}
          chosen={chosen}
          choose={(value) =>
            dispatch({
              type: 'edit',
              patches: [
                { path: 'mockup.readings.closes', value: CLOSES_VALUE[value] },
                ...(value === 'open' ? [] : [{ path: 'mockup.readings.opening_deg', value: undefined } as const]),
              ],
            })
          }
          notes={issues}
        />
        {chosen === 'open' && <FigureField path="mockup.readings.opening_deg" empty="unmeasured" />}
        <FigureField path="mockup.readings.error_mm" empty="default" />
        <FigureField path="mockup.readings.stop_mm" empty="default" />
        {chosen === 'open' && <FigureField path="mockup.readings.error_deg" empty="default" />}
      </section>
      <details className="assumptions">
        <summary>Measured again</summary>
        <p className="help">
          Where the card raised a doubt: each counts beside the first measure, until it is settled.
        </p>
        {AGAIN.map((path) => (
          <FigureField key={path} path={path} empty="unmeasured" />
        ))}
      </details>
    </>
  );
}
