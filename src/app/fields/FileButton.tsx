import { useRef } from 'react';

interface FileButtonProps {
  /** Label of the button; `asks` is the label of the file input. */
  readonly title: string;
  readonly asks: string;
  /** Kinds of file; those of jobs unless told. */
  readonly accept?: string;
  readonly onFile: (file: File) => void;
}

const JOBS = '.json,application/json';

/** Asks for a file. */
export function FileButton({ title, asks, accept = JOBS, onFile }: FileButtonProps) {
  const input = useRef<HTMLInputElement>(null);
  return (
    <>
      <button type="button" onClick={() => input.current?.click()}>
        {title}
      </button>
      <input
        ref={input}
        type="file"
        hidden
        accept={accept}
        aria-label={asks}
        onChange={(event) => {
          const [file] = event.target.files ?? [];
          if (file !== undefined) onFile(file);
          // So that the same file can be chosen again after it was corrected.
          event.target.value = '';
        }}
      />
    </>
  );
}
