import type { JobPath } from '../../../core/index.ts';
import { Choice } from '../../fields/Choice.tsx';
import { FigureField } from '../../fields/FigureField.tsx';
import { useFieldIssues, useWritten } from '../../fields/fieldState.ts';
import { useDispatch } from '../../state/BenchContext.tsx';
import { DayField } from './DayField.tsx';

/** What was seen of the finished cover beside its gaps. */
export function OutcomeFields() {
  const closes = useWritten('outcome.closes');
  return (
    <>
      <section aria-labelledby="outcome-closing">
        <h3 id="outcome-closing">When it was handed over</h3>
        <DayField path="outcome.day" title="Handed over on" />
        <YesOrNo path="outcome.closes" title="The cover" yes="closes" no="stays open" clears="outcome.opening_deg" />
        {closes === false && <FigureField path="outcome.opening_deg" empty="unmeasured" />}
        <YesOrNo path="outcome.cracked" title="The grain at the folds" yes="cracked" no="is whole" />
        <FigureField path="outcome.error_mm" empty="default" />
      </section>
      <section aria-labelledby="outcome-week">
        <h3 id="outcome-week">A week later</h3>
        <FigureField path="outcome.weekLater_deg" empty="unmeasured" />
      </section>
    </>
  );
}

interface YesOrNoProps {
  readonly path: JobPath;
  readonly title: string;
  readonly yes: string;
  readonly no: string;
  /** A field that only a no leaves standing. */
  readonly clears?: JobPath;
}

function YesOrNo({ path, title, yes, no, clears }: YesOrNoProps) {
  const dispatch = useDispatch();
  const issues = useFieldIssues(path);
  const written = useWritten(path);
  const values = { yes: true, no: false, unsaid: undefined } as const;
  const choose = (value: string): void => {
    const put = values[value as keyof typeof values];
    const along = clears === undefined || put === false ? [] : [{ path: clears, value: undefined }];
    dispatch({ type: 'edit', patches: [{ path, value: put }, ...along] });
  };
  return (
    <Choice
      path={path}
      title={title}
      options={[
        { value: 'unsaid', label: 'not seen yet' },
        { value: 'yes', label: yes },
        { value: 'no', label: no },
      ]}
      chosen={written === true ? 'yes' : written === false ? 'no' : 'unsaid'}
      choose={choose}
      issues={issues}
    />
  );
}
