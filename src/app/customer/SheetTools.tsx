import type { Make } from '../making/useMaking.ts';
import { printSheet, type ShownSheet, saveSheet } from './saveSheet.ts';

interface TurnButtonProps {
  readonly isTurning: boolean;
  readonly setTurning: (isTurning: boolean) => void;
}

/** Lets the cover of the sheet turn, or stand still. */
export const TurnButton = ({ isTurning, setTurning }: TurnButtonProps) => (
  <button type="button" onClick={() => setTurning(!isTurning)}>
    {isTurning ? 'Stop turning' : 'Turn slowly'}
  </button>
);

/** Puts the sheet on paper, or in a file. */
export const PaperButtons = ({ shown, make }: { readonly shown: ShownSheet; readonly make: Make }) => (
  <>
    <button type="button" onClick={() => void printSheet(shown)}>
      Print
    </button>
    <button type="button" onClick={() => void make('sheet', (onLacking) => saveSheet(shown, onLacking))}>
      Save as PDF
    </button>
  </>
);
