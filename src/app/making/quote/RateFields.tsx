import { fieldNote, isStepTaken, type Job, OPTIONAL_STEPS } from '../../../core/index.ts';
import { FigureField } from '../../fields/FigureField.tsx';
import { useFieldIssues, useWritten } from '../../fields/fieldState.ts';
import { PlainField } from '../../fields/PlainField.tsx';
import { TypedField } from '../../fields/TypedField.tsx';
import { useBench, useDispatch } from '../../state/BenchContext.tsx';
import { ExtraLines } from './ExtraLines.tsx';

const BEFORE = ['measure', 'mockup', 'cut', 'edges'] as const;

/** What the maker charges and how long the work takes. */
export function RateFields() {
  const job = useBench(({ design }) => design.job);
  const { leather, pockets, seam, construction } = job;
  const isLaced = seam.method === 'lacing';
  const isDesigned = job.tooling.designs.length > 0;
  return (
    <>
      <section aria-labelledby="prices">
        <h3 id="prices">Prices</h3>
        <TextField path="rates.maker" />
        <TextField path="rates.currency" />
        <FigureField path="rates.decimals" empty="default" />
        <RateField name="outside_per_dm2" />
        {pockets.construction === 'separate' && <RateField name="pocket_per_dm2" empty="as the outside" />}
        {leather.lining !== null && <RateField name="lining_per_dm2" empty="as the outside" />}
        <RateField name={isLaced ? 'lace_per_m' : 'thread_per_m'} />
        <RateField name="cement_per_dm2" />
        {construction.ribbon !== null && <RateField name="ribbon_per_m" />}
        {construction.strap !== null && <RateField name="fastening_each" />}
        {job.finish.edge === 'painted' && <RateField name="paint_per_ml" />}
        <RateField name="hour" />
        <FigureField path="rates.markup_percent" empty="default" />
      </section>
      <ExtraLines />
      <details>
        <summary>Working time</summary>
        {(
          [
            ...BEFORE,
            ...OPTIONAL_STEPS.filter((id) => isStepTaken(job, id)).map((id) =>
              id === 'tool' && isDesigned ? 'tooling' : id,
            ),
            'punch',
            'assemble',
            isLaced ? 'lace' : 'stitch',
            'finish',
          ] as const
        ).map((step) => (
          <FigureField key={step} path={`rates.minutes.${step}`} empty="default" />
        ))}
      </details>
    </>
  );
}

function TextField({ path }: { readonly path: 'rates.maker' | 'rates.currency' }) {
  const dispatch = useDispatch();
  const { title, description } = fieldNote(path);
  const text = String(useWritten(path) ?? '');
  const issues = useFieldIssues(path);
  return (
    <PlainField
      title={title}
      help={description}
      path={path}
      text={text}
      change={(typed) =>
        dispatch({ type: 'edit', key: path, patches: [{ path, value: typed === '' ? undefined : typed }] })
      }
      issues={issues}
    />
  );
}

interface RateFieldProps {
  readonly name: keyof Job['rates']['prices'];
  /** What holds where it is left empty: without a price nothing is charged, and the line is named as one without. */
  readonly empty?: string;
}

/** One price of the maker's. */
function RateField({ name, empty = 'no price' }: RateFieldProps) {
  const path = `rates.prices.${name}` as const;
  const { title, description } = fieldNote(path);
  const written = useWritten(path);
  return (
    <TypedField
      path={path}
      title={title}
      help={description}
      shown={typeof written === 'number' ? String(written) : ''}
      placeholder={empty}
      whenEmptied={[{ path, value: undefined }]}
      emptyLabel="Take out"
    />
  );
}
