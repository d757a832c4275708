import './header/header.css';
import './page.css';
import './cover/cover.css';
import { type Report, valueAt } from '../core/index.ts';
import { FitSaid, Headline } from './panel/Headline.tsx';
import type { JobHistory } from './state/jobHistory.ts';
import type { Place } from './state/place.ts';

interface FirstWordsProps {
  readonly place: Place;
  readonly document: JobHistory['document'];
  readonly report: Report;
}

/**
 * What the page says before it can be used: the job's name and its verdict, where the page itself then has them. It is drawn by
 * `drawnOnce`, so nothing in it may need hooks.
 */
export const FirstWords = ({ place, document, report }: FirstWordsProps) => (
  <div className="page" data-place={place.id}>
    <header className="page-header">
      <h1>Coverwright</h1>
      <button type="button" className="job-name" disabled>
        {String(valueAt(document, 'name') ?? '')}
      </button>
    </header>
    {place.id === 'cover' ? (
      <main>
        <div className="cover-place">
          <section className="verdict" aria-label="The fit">
            <FitSaid
              verdict={report.verdict}
              state={report.state}
              headline={report.headline}
              leastSure={report.doubt.leastSure}
            />
          </section>
        </div>
      </main>
    ) : (
      <div className="verdict-bar">
        <Headline verdict={report.verdict} state={report.state} headline={report.headline} />
      </div>
    )}
  </div>
);

/** What it says where the page itself cannot be fetched. */
export const NotWhole = () => (
  <p className="refused" role="alert">
    The rest of Coverwright could not be fetched: the network is away, or a new version has taken its place. Your job is
    kept: reload the page.
  </p>
);
