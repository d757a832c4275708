import { FinishFields } from './FinishFields.tsx';
import { LeatherFields } from './LeatherFields.tsx';
import { MakingFields } from './MakingFields.tsx';

/** The leather, how it is worked and how it looks. */
export const LeatherCard = () => (
  <>
    <LeatherFields />
    <MakingFields />
    <FinishFields />
  </>
);
