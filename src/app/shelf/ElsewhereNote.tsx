import { PassingNote } from '../fields/PassingNote.tsx';

interface ElsewhereNoteProps<What extends string> {
  readonly elsewhere: What;
  readonly words: Readonly<Record<What, string>>;
  readonly showTheirs: () => void;
  readonly dismiss: () => void;
}

/** What another window did to the record that is open here. */
export const ElsewhereNote = <What extends string>({
  elsewhere,
  words,
  showTheirs,
  dismiss,
}: ElsewhereNoteProps<What>) => (
  <PassingNote
    role="status"
    act={
      elsewhere === 'saved' && (
        <button type="button" onClick={showTheirs}>
          Show what the other window has
        </button>
      )
    }
    dismiss={dismiss}
  >
    <p>{words[elsewhere]}</p>
  </PassingNote>
);
