import { type ReactNode, useState } from 'react';
import { saveFile } from '../state/saveFile.ts';

interface SheetButtonProps {
  /** Its name within a sentence, for where it cannot be made. */
  readonly sheet: string;
  /** Makes the PDF and says under which name it is saved. */
  readonly make: () => Promise<{ readonly name: string; readonly bytes: Uint8Array<ArrayBuffer> }>;
  readonly children: ReactNode;
}

/** Saves a sheet for a customer as a PDF. */
export function SheetButton({ sheet, make, children }: SheetButtonProps) {
  const [failure, setFailure] = useState<string | null>(null);
  const save = async (): Promise<void> => {
    try {
      const { name, bytes } = await make();
      saveFile(name, bytes, 'application/pdf');
      setFailure(null);
    } catch (error) {
      setFailure(error instanceof Error ? error.message : String(error));
    }
  };
  return (
    <>
      <button type="button" onClick={() => void save()}>
        {children}
      </button>
      {failure !== null && (
        <span className="issue" role="alert">
          The {sheet} could not be made: {failure}
        </span>
      )}
    </>
  );
}
