import { useRef } from 'react';

interface FileButtonProps {
  /** What the button says, and what the file is called where it is asked for. */
  readonly title: string;
  readonly asks: string;
  readonly onFile: (file: File) => void;
}

/** Asks for a file of jobs. */
export function FileButton({ title, asks, onFile }: FileButtonProps) {
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
        accept=".json,application/json"
        aria-label={asks}
        onChange={(event) => {
          const [file] = event.target.files ?? [];
          if (file !== undefined) onFile(file);
          // So that the same file can be chosen again once it has been put right.
          event.target.value = '';
        }}
      />
    </>
  );
}
