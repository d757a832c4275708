import { FlatPattern } from '../sheet/FlatPattern.tsx';
import { CutSizes } from './CutSizes.tsx';

interface CutSheetProps {
  readonly highlight: string | null;
}

/** What goes to the cutting mat: sizes with their sums, and the pattern. Fetched after the first paint. */
export default function CutSheet({ highlight }: CutSheetProps) {
  return (
    <>
      <CutSizes />
      <FlatPattern highlight={highlight} />
    </>
  );
}
