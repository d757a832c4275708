import { useMemo } from 'react';
import { learnFromCard } from '../../../core/index.ts';
import type { Bench } from '../../state/bench.ts';
import { lagging } from '../../state/lagging.tsx';
import { Panel } from '../PanelParts.tsx';
import { EdgeReadings } from './EdgeReadings.tsx';
import { Lesson } from './Lesson.tsx';
import { TrialFields } from './TrialFields.tsx';

/** The trial in card: its readings, what they show about the book's measures, and the correction. */
function TrialPanel({ design }: Pick<Bench, 'design'>) {
  const { job } = design;
  const lesson = useMemo(() => learnFromCard(job, job.mockup.card, job.mockup.readings), [job]);
  return (
    <Panel name="Card trial" fields={<TrialFields />}>
      <EdgeReadings job={job} />
      <Lesson job={job} lesson={lesson} />
    </Panel>
  );
}

export default lagging(({ design }) => ({ design }), TrialPanel);
