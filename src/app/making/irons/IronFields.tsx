import { useId, useState } from 'react';
import {
  degreesFromRadians,
  holeShape,
  IRONS,
  type Iron,
  type Job,
  mm,
  type Printer,
  radians,
} from '../../../core/index.ts';
import { ChoiceField } from '../../fields/ChoiceField.tsx';
import { FigureField } from '../../fields/FigureField.tsx';
import { useFieldIssues, useWritten } from '../../fields/fieldState.ts';
import { optionsOf } from '../../fields/optionsOf.ts';
import { PlainField } from '../../fields/PlainField.tsx';
import { useDraft } from '../../fields/useDraft.ts';
import { useBench, useDispatch } from '../../state/BenchContext.tsx';
import { IronTable } from './IronTable.tsx';
import { isSameIron, keepIrons, keptIrons } from './ironList.ts';
import { MEASURED, perInchOf, readPerInch, readTeeth, readTenStrides } from './readIron.ts';

type Method = 'stitching' | 'lacing';

const kindsFor = (method: Method) =>
  (Object.keys(IRONS) as (keyof typeof IRONS)[]).filter((kind) => (IRONS[kind] as readonly string[]).includes(method));

/** What a maker who has named no iron starts from: the pitch and the slits of the job. The rest is common practice, no source. */
function usualIron(job: Job): Iron {
  const { method, pitch_mm } = job.seam;
  const { size, slant } = holeShape(job);
  const isLaced = method === 'lacing';
  return {
    kind: isLaced ? 'lacing chisel' : 'pricking iron',
    name: '',
    pitch_mm,
    teeth: isLaced ? [4, 1] : [10, 2],
    tooth_mm: mm(Math.min(isLaced ? size : 2, 0.6 * pitch_mm)),
    angle_deg: isLaced ? degreesFromRadians(radians(slant ?? 0)) : 45,
  };
}

const ironTitle = ({ name, kind, pitch_mm }: Iron, lengths: Printer): string =>
  `${name || kind}, ${lengths.exact(pitch_mm)}`;

/** The iron of the job, chosen from the maker's own, and its measures. */
export function IronFields() {
  const dispatch = useDispatch();
  const id = useId();
  const [own, setOwn] = useState(() => keptIrons().irons);
  const [isRefused, setRefused] = useState(false);
  const { job, lengths } = useBench(({ history: { good }, lengths }) => ({ job: good.job, lengths }));
  const { iron, method } = job.seam;
  const put = (value: Iron | undefined): void => dispatch({ type: 'edit', patches: [{ path: 'seam.iron', value }] });
  const keep = (irons: readonly Iron[]): void => {
    setOwn([...irons]);
    setRefused(!keepIrons({ irons: [...irons] }));
  };
  const fitting = own.filter(({ kind }) => kindsFor(method).includes(kind));
  const at = iron === null ? -1 : fitting.findIndex((each) => isSameIron(each, iron));
  const chosen = iron === null ? '' : at < 0 ? 'this' : String(at);
  const choose = (value: string): void => {
    if (value === 'this') return;
    put(value === '' ? undefined : value === 'new' ? usualIron(job) : fitting[Number(value)]);
  };
  return (
    <section aria-labelledby="iron-fields">
      <h3 id="iron-fields">Iron or punch</h3>
      <div className="field tall">
        <label htmlFor={id}>Holes made with</label>
        <select id={id} data-path="seam.iron" value={chosen} onChange={({ target }) => choose(target.value)}>
          <option value="">any tool, spaced evenly</option>
          {fitting.map((each, i) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: two irons may be alike but for their teeth
            <option key={i} value={String(i)}>
              {ironTitle(each, lengths)}
            </option>
          ))}
          {iron !== null && at < 0 && <option value="this">{ironTitle(iron, lengths)}</option>}
          {iron === null && <option value="new">an iron not in the list</option>}
        </select>
      </div>
      {iron === null ? (
        <p className="help">
          With an iron, holes are whole strides from each corner. The cut size goes with them where the fit allows it.
        </p>
      ) : (
        <Measures iron={iron} method={method} />
      )}
      {iron !== null && at < 0 && (
        <button type="button" onClick={() => keep([...own, iron])}>
          Keep in my irons
        </button>
      )}
      {iron !== null && at >= 0 && (
        <button type="button" onClick={() => keep(own.filter((each) => each !== fitting[at]))}>
          Take out of my irons
        </button>
      )}
      {isRefused && <p role="alert">This browser did not keep the list. Save the job: it has its iron.</p>}
      <IronTable own={own} lengths={lengths} />
    </section>
  );
}

/** One iron's measures. Its stride is typed in mm, by stitches per inch, or as the length of ten strides. */
function Measures({ iron, method }: { readonly iron: Iron; readonly method: Method }) {
  const dispatch = useDispatch();
  const units = useBench(({ lengths }) => lengths.units);
  const exact = useBench(({ lengths }) => lengths.exact);
  const name = String(useWritten('seam.iron.name') ?? '');
  const nameIssues = useFieldIssues('seam.iron.name');
  const putStride = (value: number): void =>
    dispatch({ type: 'edit', key: 'seam.iron.pitch_mm', patches: [{ path: 'seam.iron.pitch_mm', value }] });
  const perInch = useDraft('', Number(iron.pitch_mm), perInchOf, readPerInch, putStride);
  const ten = useDraft(
    '',
    Number(iron.pitch_mm),
    (stride) => exact(MEASURED * stride),
    (text) => readTenStrides(text, units),
    putStride,
  );
  const teeth = useDraft(
    'seam.iron.teeth',
    iron.teeth,
    (counts) => counts.join(', '),
    readTeeth,
    (value) => dispatch({ type: 'edit', key: 'seam.iron.teeth', patches: [{ path: 'seam.iron.teeth', value }] }),
  );
  const kinds = optionsOf(kindsFor(method));
  return (
    <>
      <ChoiceField path="seam.iron.kind" title="Tool" options={kinds} />
      <PlainField
        title="Name of the iron"
        help="Your own name for it, if you like."
        path="seam.iron.name"
        text={name}
        change={(value) =>
          dispatch({ type: 'edit', key: 'seam.iron.name', patches: [{ path: 'seam.iron.name', value }] })
        }
        issues={nameIssues}
      />
      <FigureField path="seam.iron.pitch_mm" empty="required" />
      <PlainField
        title="Stitches per inch"
        help="The stride is 25.4 mm divided by it. What is stamped on an iron is not exact."
        text={perInch.text}
        change={perInch.change}
        issues={perInch.issues}
        keys={[]}
      />
      <PlainField
        title="Ten strides measured"
        help="Prick eleven holes along a rule. Measure from the first to the last."
        text={ten.text}
        change={ten.change}
        issues={ten.issues}
        keys={[]}
      />
      <PlainField
        title="Teeth"
        help="How many teeth your irons of this stride have, as 10, 2."
        path="seam.iron.teeth"
        text={teeth.text}
        change={teeth.change}
        issues={teeth.issues}
        keys={[]}
      />
      <FigureField
        path="seam.iron.tooth_mm"
        empty="required"
        title={iron.kind === 'drive punch' ? 'Diameter of the hole' : 'Width of a tooth'}
      />
      {iron.kind !== 'drive punch' && <FigureField path="seam.iron.angle_deg" empty="default" />}
    </>
  );
}
