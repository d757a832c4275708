import type { ReactNode } from 'react';

interface PassingNoteProps {
  readonly role: 'alert' | 'status';
  readonly children: ReactNode;
  /** A button for what can be done about it. */
  readonly act?: ReactNode;
  readonly dismiss: () => void;
}

/** What has happened and is told once: it stands until it is closed. */
export const PassingNote = ({ role, children, act, dismiss }: PassingNoteProps) => (
  <div className="refused" role={role}>
    {children}
    {act}{' '}
    <button type="button" onClick={dismiss}>
      Close this note
    </button>
  </div>
);
