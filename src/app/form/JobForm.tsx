import { IssueList } from '../fields/IssueList.tsx';
import { BookFields } from './BookFields.tsx';
import { DoubtFields } from './DoubtFields.tsx';
import { LeatherFields } from './LeatherFields.tsx';
import { MakingFields } from './MakingFields.tsx';
import { PatternFields } from './PatternFields.tsx';
import { SeamFields } from './SeamFields.tsx';

/** The job as a form. Every entry takes effect as it is typed. */
export default function JobForm() {
  return (
    <form className="job-form" aria-label="The job in figures" onSubmit={(event) => event.preventDefault()}>
      <IssueList />
      <BookFields />
      <LeatherFields />
      <MakingFields />
      <SeamFields />
      <PatternFields />
      <DoubtFields />
    </form>
  );
}
