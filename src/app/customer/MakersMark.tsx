import { useState } from 'react';
import { FileButton } from '../fields/FileButton.tsx';
import { keepMark, readMark } from './mark.ts';

interface MakersMarkProps {
  /** The mark as a data address; null for none. */
  readonly mark: string | null;
  readonly setMark: (mark: string | null) => void;
}

/** Opens the maker's own mark, or takes it off the page. It stays in this browser. */
export function MakersMark({ mark, setMark }: MakersMarkProps) {
  const [note, setNote] = useState<{ readonly words: string; readonly isIssue: boolean } | null>(null);
  const change = (next: string | null): void => {
    setMark(next);
    const isKept = keepMark(next);
    setNote(isKept ? null : { words: 'This browser does not keep it: it is gone with this page.', isIssue: true });
  };
  const open = async (file: File): Promise<void> => {
    setNote({ words: 'The picture is being read.', isIssue: false });
    const read = await readMark(file);
    if (read.ok) change(read.mark);
    else setNote({ words: read.why, isIssue: true });
  };
  return (
    <fieldset className="row">
      <legend className="only-heard">Your mark</legend>
      <FileButton
        title={mark === null ? 'Add your mark' : 'Change your mark'}
        asks="Picture of your mark"
        accept=".png,.jpg,.jpeg,.svg,image/png,image/jpeg,image/svg+xml"
        onFile={(file) => void open(file)}
      />
      {mark !== null && (
        <button type="button" onClick={() => change(null)}>
          Take your mark off
        </button>
      )}
      <span className="help">PNG, JPEG or SVG. It stays in this browser and is in no link.</span>
      <span role="status" className={note?.isIssue ? 'issue' : 'help'}>
        {note?.words}
      </span>
    </fieldset>
  );
}
