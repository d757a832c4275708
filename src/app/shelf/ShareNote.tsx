import type { Shared } from './useSharing.ts';

interface ShareNoteProps {
  readonly shared: Shared;
  readonly onClose: () => void;
}

/** The link that was made, to copy by hand where the browser refused to copy it. */
export function ShareNote({ shared, onClose }: ShareNoteProps) {
  return (
    <div className="noted share-note not-printed" role="status">
      <p>{words(shared)}</p>
      {shared.link !== null && (
        <input
          type="text"
          readOnly
          aria-label="Link to this job"
          value={shared.link}
          onFocus={(event) => event.target.select()}
        />
      )}
      <button type="button" onClick={onClose}>
        Close this note
      </button>
    </div>
  );
}

function words({ link, isCopied }: Shared): string {
  if (link === null) return 'This job is too long for a link: save it as a file and send that.';
  const holds = 'It holds the whole job in itself; nothing has left this machine.';
  return isCopied ? `The link is copied. ${holds}` : `Copy this link. ${holds}`;
}
