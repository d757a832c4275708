import { memo } from 'react';
import {
  capital,
  DOUBT_PATHS,
  type Doubt,
  type DoubtPath,
  doubtOf,
  fieldNote,
  ORIGINS,
  valueAt,
} from '../../core/index.ts';
import { giveOrTake, ORIGIN_WORDS } from '../fields/doubtText.ts';
import { useFieldIssues } from '../fields/fieldState.ts';
import { PlainField } from '../fields/PlainField.tsx';
import { Select } from '../fields/Select.tsx';
import { Term } from '../fields/Term.tsx';
import { TypedField } from '../fields/TypedField.tsx';
import { useBench, useDispatch } from '../state/BenchContext.tsx';

const SPREADS = [
  { value: 'normal', label: 'mostly small' },
  { value: 'even', label: 'any size equally likely' },
];

const ORIGIN_OPTIONS = ORIGINS.map((value) => ({ value, label: ORIGIN_WORDS[value] }));

/** How far each figure may be off: of every input that this cover has, and of those the job says something of. */
export function DoubtFields() {
  // A text, so that the section renders again only where the list itself changes.
  const shown = useBench(({ design, history }) =>
    DOUBT_PATHS.filter(
      (path) =>
        design.doubt.inputs.some((input) => input.path === path) ||
        design.job.doubts[path] !== undefined ||
        valueAt(history.document, `doubts.${path}`) !== undefined,
    ).join(' '),
  );
  return (
    <section aria-labelledby="doubt-fields">
      <h3 id="doubt-fields">Doubts</h3>
      <details>
        <summary>How far each figure may be off</summary>
        <p className="help">
          <Term word="give or take" said="Give or take" />: 19 in 20 are no further off. Lengths by one tool share the
          error of its scale. Other errors that go together are written in the job file, under correlations.
        </p>
        {shown.split(' ').map((path) => (
          <DoubtField key={path} path={path as DoubtPath} />
        ))}
      </details>
    </section>
  );
}

/** The doubt of one input, and how it comes about. Emptied, each entry takes its default. */
const DoubtField = memo(function DoubtField({ path }: { readonly path: DoubtPath }) {
  const { lengths, written, from, tool, ...usual } = useBench(({ lengths, history, design: { job } }) => {
    const given = job.doubts[path];
    // Where a value comes from bears on its default doubt.
    const { u, distribution, ...usual } = doubtOf(
      { ...job, doubts: { ...job.doubts, [path]: { from: given?.from } } },
      path,
    );
    return {
      lengths,
      written: valueAt(history.document, `doubts.${path}.u`),
      from: ORIGIN_WORDS[usual.from],
      tool: given?.with ?? usual.with,
      u,
      spread: distribution,
      isAssumed: usual.from === 'assumed',
      usualTool: usual.with,
    };
  });
  const { title } = fieldNote(`doubts.${path}.u`);
  return (
    <div className="doubt">
      <TypedField
        path={`doubts.${path}.u`}
        title={title}
        help={`${capital(from)}${tool === '' ? '' : `, ${tool}`}.`}
        shown={typeof written === 'number' ? giveOrTake(path, written, lengths) : ''}
        placeholder={`${giveOrTake(path, usual.u, lengths)}, ${usual.isAssumed ? 'assumed' : 'usual'}`}
        whenEmptied={[{ path: `doubts.${path}.u`, value: undefined }]}
      />
      <details>
        <summary>
          How it comes about<span className="only-heard">: {title}</span>
        </summary>
        <DoubtSource path={path} title={title} from={from} tool={usual.usualTool} spread={usual.spread} />
      </details>
    </div>
  );
});

interface DoubtSourceProps {
  readonly path: DoubtPath;
  readonly title: string;
  /** What applies where the job is silent. */
  readonly from: string;
  readonly tool: string;
  readonly spread: Doubt['distribution'];
}

function DoubtSource({ path, title, ...usual }: DoubtSourceProps) {
  const dispatch = useDispatch();
  const { spread, from, tool } = useBench(({ history: { document } }) => ({
    spread: valueAt(document, `doubts.${path}.distribution`),
    from: valueAt(document, `doubts.${path}.from`),
    tool: valueAt(document, `doubts.${path}.with`),
  }));
  const withPath = `doubts.${path}.with` as const;
  const issues = useFieldIssues(withPath);
  const of = <span className="only-heard">: {title}</span>;
  return (
    <>
      <Select
        path={`doubts.${path}.distribution`}
        title={<>Errors{of}</>}
        options={SPREADS}
        chosen={spread}
        usual={`${SPREADS.find(({ value }) => value === usual.spread)!.label}, usual`}
      />
      <Select
        path={`doubts.${path}.from`}
        title={<>Comes from{of}</>}
        options={ORIGIN_OPTIONS}
        chosen={from}
        usual={from === undefined ? `${usual.from}, as usual` : 'as usual'}
      />
      <PlainField
        path={withPath}
        title={<>Measured with{of}</>}
        text={typeof tool === 'string' ? tool : ''}
        placeholder={usual.tool}
        issues={issues}
        change={(text) =>
          dispatch({
            type: 'edit',
            key: withPath,
            patches: [{ path: withPath, value: text === '' ? undefined : text }],
          })
        }
      />
    </>
  );
}
