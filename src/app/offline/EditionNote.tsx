import './offline.css';
import { useEdition } from './useEdition.ts';

/** Says when a newer edition has been fetched; it is put to use at the maker's word and never before. */
export default function EditionNote() {
  const { isWaiting, othersAreOpen, takeIt, dismiss } = useEdition();
  if (!isWaiting) return null;
  return (
    <p className="edition-note" role="status">
      {othersAreOpen
        ? 'Other windows of this page are at work with the present edition: close them, then take the new one here.'
        : 'A newer edition of Coverwright has been fetched. It is used from the next start, when all its windows are closed.'}{' '}
      <button type="button" onClick={takeIt}>
        Take it now
      </button>{' '}
      <button type="button" className="quiet" onClick={dismiss}>
        Later
      </button>
    </p>
  );
}
