import { useState } from 'react';
import { fileName } from '../../output/fileName.ts';
import { today } from '../../output/today.ts';
import { useBench } from '../state/BenchContext.tsx';
import { saveFile } from '../state/saveFile.ts';

/** Saves the form for a customer who measures the book, in the units of the bench. */
export function MeasuringSheetButton() {
  const units = useBench(({ view }) => view.units);
  const [failure, setFailure] = useState<string | null>(null);
  const save = async (): Promise<void> => {
    try {
      const { measuringSheetPdf } = await import('../../output/measuringSheet/measuringSheetPdf.ts');
      const bytes = await measuringSheetPdf({ units, paper: units === 'in' ? 'Letter' : 'A4', date: today() });
      saveFile(fileName('Measuring sheet', 'pdf', [units]), bytes, 'application/pdf');
      setFailure(null);
    } catch (error) {
      setFailure(error instanceof Error ? error.message : String(error));
    }
  };
  return (
    <>
      <button type="button" onClick={() => void save()}>
        Save a measuring sheet ({units})
      </button>
      {failure !== null && (
        <span className="issue" role="alert">
          The measuring sheet could not be made: {failure}
        </span>
      )}
    </>
  );
}
