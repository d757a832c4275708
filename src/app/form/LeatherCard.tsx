import { LeatherFields } from './LeatherFields.tsx';
import { MakingFields } from './MakingFields.tsx';

/** The leather, and how it is worked. */
export const LeatherCard = () => (
  <>
    <LeatherFields />
    <MakingFields />
  </>
);
