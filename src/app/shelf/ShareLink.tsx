import { useEffect, useState } from 'react';
import { shareFragment, withoutDrawings } from '../../output/shareLink/shareLink.ts';
import { useBenchStore } from '../state/BenchContext.tsx';
import { pageAddress } from '../state/sheetBlock.ts';
import './shareLink.css';

/** An address that holds the open job, copied, and to copy by hand where the browser refuses. */
export default function ShareLink({ onClose }: { readonly onClose: () => void }) {
  const { getState } = useBenchStore();
  // The job as it is now: a link does not follow later changes.
  const [{ link, isWhole }] = useState(() => {
    const { document } = getState().history.good;
    const whole = shareFragment(document);
    const rest = whole === null ? withoutDrawings(document) : null;
    const fragment = whole ?? (rest && shareFragment(rest));
    return { link: fragment === null ? null : `${pageAddress()}${fragment}`, isWhole: whole !== null };
  });
  const [isCopied, setCopied] = useState<boolean | null>(link === null ? false : null);
  useEffect(() => {
    if (link === null) return;
    // Pages that are not secure, and browsers that ask first, may refuse.
    const asked = navigator.clipboard?.writeText(link) ?? Promise.reject(new Error('no clipboard'));
    asked.then(
      () => setCopied(true),
      () => setCopied(false),
    );
  }, [link]);
  if (isCopied === null) return null;
  return (
    <div className="noted share-note not-printed" role="status">
      <p>{words(link, isCopied, isWhole)}</p>
      {link !== null && (
        <input
          type="text"
          readOnly
          aria-label="Link to this job"
          value={link}
          onFocus={(event) => event.target.select()}
        />
      )}
      <button type="button" onClick={onClose}>
        Close this note
      </button>
    </div>
  );
}

function words(link: string | null, isCopied: boolean, isWhole: boolean): string {
  if (link === null) return 'This job is too long for a link: save it as a file and send that.';
  const holds = isWhole
    ? 'It holds the whole job in itself; nothing has left this machine.'
    : 'Your own drawings are too long for a link and stay behind. To send them, save the job as a file.';
  return isCopied ? `The link is copied. ${holds}` : `Copy this link. ${holds}`;
}
