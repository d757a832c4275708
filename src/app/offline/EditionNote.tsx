import './offline.css';
import { useEdition } from './useEdition.ts';

/** Says when a newer edition has been fetched; it is put to use at the maker's word and never before. */
export default function EditionNote() {
  const { isWaiting, othersAreOpen, takeIt, dismiss } = useEdition();
  if (!isWaiting) return null;
  return (
    <p className="edition-note not-printed" role="status">
      {othersAreOpen
        ? 'A newer version is ready. Close the other Coverwright windows, then update here.'
        : 'A newer version of Coverwright is ready. It is used once all Coverwright windows have been closed, or update now.'}{' '}
      <button type="button" onClick={takeIt}>
        Update now
      </button>{' '}
      <button type="button" className="quiet" onClick={dismiss}>
        Later
      </button>
    </p>
  );
}
