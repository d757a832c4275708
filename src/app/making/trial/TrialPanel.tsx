import { useDeferredValue, useMemo } from 'react';
import { learnFromCard } from '../../../core/index.ts';
import { useBench } from '../../state/BenchContext.tsx';
import { Panel } from '../PanelParts.tsx';
import { Lesson } from './Lesson.tsx';
import { TrialFields } from './TrialFields.tsx';

/** The trial in card: what it showed, what that teaches of the book's measures, and the correction. */
export default function TrialPanel() {
  const { design } = useBench();
  // Learning folds the card many times over, so it may lag behind a keystroke.
  const job = useDeferredValue(design.job);
  const lesson = useMemo(() => learnFromCard(job, job.mockup.card, job.mockup.readings), [job]);
  return (
    <Panel name="Card trial" fields={<TrialFields />}>
      <Lesson job={job} lesson={lesson} />
    </Panel>
  );
}
