import { fileName } from '../../output/fileName.ts';
import { today } from '../../output/today.ts';
import { useBench } from '../state/BenchContext.tsx';
import { SheetButton } from '../take/SheetButton.tsx';

/** Saves the form for a customer who measures the book, in the units of the bench. */
export function MeasuringSheetButton() {
  const units = useBench(({ view }) => view.units);
  const make = async () => {
    const { measuringSheetPdf } = await import('../../output/measuringSheet/measuringSheetPdf.ts');
    const bytes = await measuringSheetPdf({ units, paper: units === 'in' ? 'Letter' : 'A4', date: today() });
    return { name: fileName('Measuring sheet', 'pdf', [units]), bytes };
  };
  return (
    <SheetButton sheet="measuring sheet" make={make}>
      Save a measuring sheet ({units})
    </SheetButton>
  );
}
