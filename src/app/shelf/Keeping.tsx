import { lazy } from 'react';
import './shelf.css';
import { issueLine } from '../fields/issueWords.ts';
import { PassingNote } from '../fields/PassingNote.tsx';
import { LatePart } from '../loading/LatePart.tsx';
import { useBench } from '../state/BenchContext.tsx';
import { goTo } from '../state/place.ts';
import { ElsewhereNote } from './ElsewhereNote.tsx';
import { savedAt } from './savedAt.ts';
import type { Lost } from './shelfCount.ts';
import { TroubleNote } from './TroubleNote.tsx';
import { useLinkedJob } from './useLinkedJob.ts';
import { type Elsewhere, type Offered, useShelfKeeping } from './useShelfKeeping.ts';

const ShelfPlace = lazy(() => import('./ShelfPlace.tsx'));

/** Keeps the open job and reports what happens to it; shows the shelf where that is the place. Fetched after the first paint. */
export default function Keeping({ showsShelf }: { readonly showsShelf: boolean }) {
  const isKept = useBench(({ isKept }) => isKept);
  const keeping = useShelfKeeping();
  const linked = useLinkedJob();
  const { elsewhere } = keeping;
  return (
    <>
      {linked.issues !== null && (
        <PassingNote role="alert" dismiss={linked.dismiss}>
          <p>The link in the address was not opened; the open job is unchanged.</p>
          <ul>
            {linked.issues.map((issue) => (
              <li key={`${issue.path} ${issue.message}`}>{issueLine(issue)}</li>
            ))}
          </ul>
        </PassingNote>
      )}
      {isKept && !showsShelf && <TroubleNote trouble={keeping.trouble} />}
      {keeping.lost !== null && (
        <PassingNote
          role="status"
          act={
            !showsShelf && (
              <button type="button" onClick={() => goTo('shelf')}>
                Go to the shelf
              </button>
            )
          }
          dismiss={keeping.dismissLost}
        >
          <p>{lostWords(keeping.lost)}</p>
        </PassingNote>
      )}
      {keeping.offered !== null && (
        <PassingNote
          role="status"
          act={
            <button type="button" onClick={keeping.showOffered}>
              Show it
            </button>
          }
          dismiss={keeping.dismissOffered}
        >
          <p>{offeredWords(keeping.offered)}</p>
        </PassingNote>
      )}
      {elsewhere !== null && (
        <ElsewhereNote
          elsewhere={elsewhere}
          words={ELSEWHERE}
          showTheirs={keeping.showTheirs}
          dismiss={keeping.dismiss}
        />
      )}
      {showsShelf && (
        <LatePart name="list of jobs">
          <ShelfPlace keeping={keeping} onClose={() => goTo('cover')} />
        </LatePart>
      )}
    </>
  );
}

function lostWords({ covers, at, left }: Lost): string {
  return `The browser has deleted covers from the shelf. It may do so when the disk is full, or when its data is cleared. The shelf held ${covers} on ${savedAt(at)}, and holds ${left === 0 ? 'none' : left} now. The open job is still here. Import a file that you exported to bring the others back.`;
}

function offeredWords({ opening: { written, savedAt: time }, isLeft, more }: Offered): string {
  const name = String(written.document.name ?? 'Untitled cover');
  const said = isLeft
    ? `Another window was closed with a state of ${name} that had not reached the shelf.`
    : time === null
      ? `The shelf’s later state is shown. An entry for ${name} that had not reached the shelf was kept too.`
      : `The shelf has another state of ${name} than the one shown, saved ${savedAt(time)}.`;
  return more === 0 ? said : `${said} ${more === 1 ? 'One more waits' : `${more} more wait`} after it.`;
}

const ELSEWHERE: Readonly<Record<Elsewhere, string>> = {
  saved:
    'Another window has changed this job. If you go on here, what you do becomes a job of its own. Nothing is lost in either window.',
  removed:
    'Another window has removed this job from the shelf. If you go on here, what you do becomes a job of its own.',
  parted:
    'The shelf held another state of this job, or it was removed there. What you did here is now a job of its own.',
};
