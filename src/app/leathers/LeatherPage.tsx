import { lazy, useState } from 'react';
import { openLeather } from '../../core/index.ts';
import { LatePart } from '../loading/LatePart.tsx';
import { ElsewhereNote } from '../shelf/ElsewhereNote.tsx';
import type { ShelfTrouble } from '../shelf/shelfTrouble.ts';
import { TroubleNote } from '../shelf/TroubleNote.tsx';
import { theLeathers } from '../shelf/theLeathers.ts';
import { Versions } from '../shelf/Versions.tsx';
import { useLengths } from '../state/BenchContext.tsx';
import { addressOf, goTo } from '../state/place.ts';
import { useUndoKeys } from '../state/useUndoKeys.ts';
import { BoughtFields } from './BoughtFields.tsx';
import { CalliperReadings } from './CalliperReadings.tsx';
import { Hide } from './Hide.tsx';
import { JobsOfLeather } from './JobsOfLeather.tsx';
import { saveLeatherFile } from './saveLeatherFile.ts';
import { TANNED } from './tanned.ts';
import { TestCards } from './tests/TestCards.tsx';
import { type LeatherElsewhere, useLeather } from './useLeather.ts';

const LeatherKnowledgeParts = lazy(() => import('./knowledge/LeatherKnowledgeParts.tsx'));

/** One leather: what was bought, what was read of it, and what was made of it. */
export function LeatherPage({ id }: { readonly id: string }) {
  const editing = useLeather(id);
  const { history, dispatch, trouble, elsewhere } = editing;
  const lengths = useLengths();
  const [showsVersions, setShowsVersions] = useState(false);
  const [refused, setRefused] = useState<ShelfTrouble | null>(null);
  useUndoKeys(dispatch, true);

  const remove = async (): Promise<void> => {
    await editing.flush();
    const done = await theLeathers.remove(id);
    if (done.ok) goTo('leathers');
    else setRefused(done.trouble);
  };
  const copy = async (): Promise<void> => {
    await editing.flush();
    const done = await theLeathers.copy(id);
    if (done.ok) goTo('leathers', done.value.id);
    else setRefused(done.trouble);
  };

  const back = (
    <a className="link" href={addressOf('leathers')}>
      All leathers
    </a>
  );
  if (history === null)
    return (
      <section className="leather-page" aria-label="Leather">
        <p className="row">{back}</p>
        <TroubleNote trouble={trouble} />
        {trouble === null && <p role="status">The leather is being read.</p>}
      </section>
    );

  const { present: leather } = history;
  return (
    // What is typed after a field is left is another step of undo.
    <section className="leather-page" aria-labelledby="leather-title" onBlur={() => dispatch({ type: 'settle' })}>
      <div className="row leather-tools">
        {back}
        <div className="row">
          {history.past.length > 0 && (
            <button type="button" onClick={() => dispatch({ type: 'undo' })}>
              Undo
            </button>
          )}
          {history.future.length > 0 && (
            <button type="button" onClick={() => dispatch({ type: 'redo' })}>
              Redo
            </button>
          )}
          <button type="button" onClick={() => setShowsVersions(!showsVersions)} aria-expanded={showsVersions}>
            Versions
          </button>
          <button type="button" onClick={() => void copy()}>
            Copy for another hide
          </button>
          <button type="button" onClick={() => saveLeatherFile(leather)}>
            Export
          </button>
          <button type="button" onClick={() => void remove()}>
            Remove
          </button>
        </div>
      </div>
      <TroubleNote trouble={trouble} />
      <TroubleNote trouble={refused} />
      {elsewhere !== null && (
        <ElsewhereNote
          elsewhere={elsewhere}
          words={ELSEWHERE}
          showTheirs={editing.showTheirs}
          dismiss={editing.dismiss}
        />
      )}
      <header className="leather-head">
        <Hide colour={leather.colour} surface={leather.surface} />
        <div>
          <h2 id="leather-title">{leather.name.trim() === '' ? theLeathers.kind.untitled : leather.name}</h2>
          <p>
            {lengths.weights(leather.min_mm, leather.max_mm)}, {TANNED[leather.tannage]}, {leather.temper}
          </p>
        </div>
      </header>
      {showsVersions && (
        <Versions
          shelf={theLeathers}
          record={{ id, name: leather.name }}
          act="Put this one back"
          onAct={({ document }) => {
            const opened = openLeather(document);
            if (opened.ok) dispatch({ type: 'change', leather: opened.document });
            setShowsVersions(false);
          }}
          onClose={() => setShowsVersions(false)}
        />
      )}
      <div className="leather-parts">
        <div>
          <BoughtFields
            leather={leather}
            change={(next, field) => dispatch({ type: 'change', leather: next, field })}
          />
          <CalliperReadings
            readings={leather.callipered_mm}
            sold={leather}
            change={(callipered_mm) => dispatch({ type: 'change', leather: { ...leather, callipered_mm } })}
          />
        </div>
        <div>
          <TestCards
            leather={leather}
            change={(tests) => dispatch({ type: 'change', leather: { ...leather, tests } })}
          />
          <LatePart name="figures of the leather">
            <LeatherKnowledgeParts
              id={id}
              leather={leather}
              change={(covers) => dispatch({ type: 'change', leather: { ...leather, covers } })}
            />
          </LatePart>
          <JobsOfLeather id={id} />
        </div>
      </div>
    </section>
  );
}

const ELSEWHERE: Readonly<Record<LeatherElsewhere, string>> = {
  saved:
    'Another window has changed this leather. If you go on here, what you do becomes a leather of its own. Nothing is lost in either window.',
  removed: 'Another window has removed this leather. If you go on here, what you do becomes a leather of its own.',
  parted:
    'Another window had changed or removed this leather meanwhile. What you did here is now a leather of its own.',
};
