import {
  chanceWords,
  easePaid,
  findFieldNote,
  GIVE_OR_TAKE,
  type Report,
  type ReportTrials,
  whatWouldReach,
} from '../../core/index.ts';
import { giveOrTake, ORIGIN_WORDS } from '../fields/doubtText.ts';
import { goToField } from '../fields/goToField.ts';
import { type Bench, trialsOf } from '../state/bench.ts';
import { lagging } from '../state/lagging.tsx';
import { mainLines, type ShownLine } from './mainLines.ts';
import './howSure.css';

interface Needs extends Pick<Bench, 'report' | 'lengths'> {
  readonly trials: ReportTrials | null;
}

type Edge = 'foreEdge' | 'head' | 'tail' | 'flat';

interface ShownEdge {
  readonly id: Edge;
  readonly name: string;
  readonly of: Report['doubt']['flat'];
  /** What holds where the length is not negative. */
  readonly holds: string;
}

/** What makes the fit unsure, what the sized ease pays for, and what to measure next. Fetched after the first paint. */
function HowSure({ report, lengths, trials }: Needs) {
  const { doubt } = report;
  const { foreEdge, head, tail } = doubt.edges;
  const isAlike = JSON.stringify(head) === JSON.stringify(tail);
  const room = 'there is room';
  const edges: readonly ShownEdge[] = [
    { id: 'foreEdge', name: 'Fore-edges, both together', of: foreEdge, holds: 'it closes' },
    { id: 'head', name: isAlike ? 'Head and tail' : 'Head', of: head, holds: room },
    ...(isAlike ? [] : [{ id: 'tail', name: 'Tail', of: tail, holds: room } as const]),
    { id: 'flat', name: 'Lying flat', of: doubt.flat, holds: 'it lies flat' },
  ];
  /** By trials where those say that the first order is not enough. */
  const spread = (id: Edge, u: number): string => {
    const isTried = trials?.nonLinear.includes(id) === true;
    return `${lengths.small(GIVE_OR_TAKE * (isTried ? trials.edges[id].u_mm : u), 1)}${isTried ? ' by trials' : ''}`;
  };
  const hopeless = whatWouldReach(report);
  return (
    <section className="how-sure not-printed" aria-label="How sure">
      <p className="help">What makes each edge unsure, most first. Give or take: 19 in 20 are no further off.</p>
      {edges.map(({ id, name, of, holds }) => (
        <details key={name}>
          <summary>
            {name}: {of.spare_mm < 0 ? 'short by' : 'spare'} {lengths.small(Math.abs(of.spare_mm), 1)}, give or take{' '}
            {spread(id, of.u_mm)}; {holds} in {chanceWords(of.chance)}
          </summary>
          <Budget lines={mainLines(of.budget)} name={name} lengths={lengths} />
        </details>
      ))}
      <EasePaid report={report} lengths={lengths} />
      <h3>Measure next</h3>
      {hopeless !== '' && <p className="remedy">{hopeless}</p>}
      {doubt.measureNext.length === 0 ? (
        <p className="help">No single measurement would save as much as {lengths.small(0.05)}.</p>
      ) : (
        <ol className="measure-next">
          {doubt.measureNext.map(({ path, words, saves_mm, of }) => (
            <li key={`${path} ${words}`}>
              <button type="button" className="quiet" onClick={() => goToField(path)}>
                {words}
              </button>{' '}
              <span>
                saves {lengths.small(saves_mm)} of {of}
              </span>
            </li>
          ))}
        </ol>
      )}
    </section>
  );
}

interface BudgetProps {
  readonly lines: readonly ShownLine[];
  readonly name: string;
  readonly lengths: Bench['lengths'];
}

function Budget({ lines, name, lengths }: BudgetProps) {
  return (
    <table>
      <caption className="only-heard">What makes it unsure: {name}</caption>
      <thead>
        <tr>
          <th scope="col">Unsure</th>
          <th scope="col">Give or take</th>
          <th scope="col">Moves it by</th>
          <th scope="col">Share</th>
        </tr>
      </thead>
      <tbody>
        {lines.map(({ path, words, u, sensitivity, share, from, tool }) => (
          <tr key={path}>
            <th scope="row">
              {words}
              {from !== null && (
                <span className="help told-from">
                  {[fieldName(path), ORIGIN_WORDS[from], tool].filter((part) => part !== '').join(', ')}
                </span>
              )}
              <ShareBar share={share} />
            </th>
            <td>{u !== null && giveOrTake(path, u, lengths)}</td>
            <td>{u !== null && lengths.small(GIVE_OR_TAKE * u * Math.abs(sensitivity))}</td>
            <td>{lengths.share(share)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

/** Name of a field whose figure has no length's unit to tell what it is; empty for any other. */
function fieldName(path: string): string {
  const field = findFieldNote(path);
  return field === undefined || field.unit === 'mm' ? '' : field.title;
}

/** A share as a bar; the figure stands beside it. */
function ShareBar({ share }: { readonly share: number }) {
  return (
    <svg className="share-bar" viewBox="0 0 100 4" preserveAspectRatio="none" aria-hidden="true" focusable="false">
      <rect className="whole" width="100" height="4" />
      <rect className="part" width={100 * Math.max(0, share)} height="4" />
    </svg>
  );
}

/** What each doubt costs of the ease that is worked out. */
function EasePaid({ report: { doubt }, lengths }: Pick<Needs, 'report' | 'lengths'>) {
  const paid = easePaid(doubt);
  if (paid.length === 0) return null;
  return (
    <details>
      <summary>What the ease pays for</summary>
      {paid.map(({ edge, name, whole, main }) => (
        <table key={edge}>
          <caption>
            {name}: {lengths.small(whole, 1)} at one edge
          </caption>
          <tbody>
            {main.map(({ path, words, costs_mm }) => (
              <tr key={path}>
                <th scope="row">{words}</th>
                <td>{lengths.small(costs_mm)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      ))}
    </details>
  );
}

export default lagging(
  (bench: Bench): Needs => ({ report: bench.report, lengths: bench.lengths, trials: trialsOf(bench) }),
  HowSure,
);
