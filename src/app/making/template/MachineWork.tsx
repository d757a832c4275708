import { parseLength } from '../../../core/index.ts';
import { kerfFor } from '../../../output/machine/kerfFor.ts';
import { bedFile, type MachineFormat } from '../../../output/machine/machineFile.ts';
import type { MachinePlan } from '../../../output/machine/machinePlan.ts';
import type { MachineProfile } from '../../../output/machine/machineProfile.ts';
import { bedFileName } from '../../../output/template/templateName.ts';
import { PlainField } from '../../fields/PlainField.tsx';
import { useBench } from '../../state/BenchContext.tsx';
import { saveFile } from '../../state/saveFile.ts';
import { FORMATS } from '../machine/formats.ts';
import { layerTitle } from '../machine/layerTitles.ts';
import { Notes } from '../PanelParts.tsx';
import type { TemplateParts } from './templateParts.ts';
import { useMachinePlan } from './useMachinePlan.ts';

interface MachineWorkProps extends TemplateParts {
  readonly profile: MachineProfile;
}

/** The pattern for one of the maker's machines: kerf from its table, passes in order, files for each bed. */
export function MachineWork({
  profile,
  choice,
  choose,
  settings,
  source,
  drawing,
  mirrored,
  isTracing,
  isLoading,
  variants,
}: MachineWorkProps) {
  const { job } = useBench(({ design }) => design);
  // Of card where the template is for card.
  const { min_mm, max_mm } = source.job.leather.outside;
  const leathers = [...new Set(profile.kerfs.map(({ leather }) => leather))];
  const leather = leathers.includes(choice.machineLeather) ? choice.machineLeather : '';
  const read =
    choice.machineThickness.trim() === '' ? null : parseLength(choice.machineThickness, { defaultUnit: 'mm' });
  const thickness = read === null ? (min_mm + max_mm) / 2 : read.ok ? read.value : null;
  const found = leather === '' || thickness === null ? null : kerfFor(profile, leather, thickness);
  const kerf_mm = settings.kerf_mm ?? found?.kerf_mm ?? 0;
  const isRight = settings.issues.kerf === undefined && (read === null || read.ok) && !isLoading;
  const { status, plan, why } = useMachinePlan(isRight ? { drawing, profile, mirrored, kerf_mm } : null);
  const save = (format: MachineFormat, type: string): void => {
    for (const bed of plan?.beds ?? []) {
      const own = { machine: profile.name, kerf_mm, bed: bed.number, beds: plan!.beds.length };
      const name = bedFileName({ job: job.name, isTracing, variants }, format, own);
      saveFile(name, bedFile(plan!, bed, format, profile.dxf), type);
    }
  };
  return (
    <>
      {leathers.length > 0 && (
        <div className="field tall">
          <label htmlFor="machine-leather">Leather, for the kerf</label>
          <select
            id="machine-leather"
            value={leather}
            onChange={({ target: { value } }) => choose({ machineLeather: value })}
          >
            <option value="">none of the table</option>
            {leathers.map((name) => (
              <option key={name}>{name}</option>
            ))}
          </select>
        </div>
      )}
      {leather !== '' && (
        <PlainField
          title="Its thickness"
          help="The middle of the job's leather, or its card, where empty."
          placeholder={`${tidy((min_mm + max_mm) / 2)} mm`}
          text={choice.machineThickness}
          change={(machineThickness) => choose({ machineThickness })}
          issues={read !== null && !read.ok ? [read.message] : []}
        />
      )}
      <PlainField
        title="Kerf"
        help="Empty: that of the machine's table. Without a unit: mm."
        placeholder={found === null ? 'none' : `${tidy(found.kerf_mm)} mm`}
        text={choice.kerf}
        change={(kerf) => choose({ kerf })}
        issues={settings.issues.kerf === undefined ? [] : [settings.issues.kerf]}
      />
      <p className="help">
        {settings.kerf_mm !== undefined
          ? `Kerf ${tidy(kerf_mm)} mm, as typed.`
          : found === null
            ? 'No kerf is allowed for: pieces come out smaller by half a cut all round.'
            : `Kerf ${tidy(kerf_mm)} mm, ${FOUND[found.by]} ${found.rows.map(({ thickness_mm }) => `${tidy(thickness_mm)} mm`).join(' and ')} in the table.`}
      </p>
      <div role="status">
        {isRight && status === 'planning' && <p>The work of the machine is being planned.</p>}
        {status === 'failed' && <p className="issue">{why}</p>}
      </div>
      {plan !== null && <Plan plan={plan} />}
      <div className="row">
        {FORMATS.map(({ format, title, type }) => (
          <button key={format} type="button" disabled={plan === null} onClick={() => save(format, type)}>
            {plan !== null && plan.beds.length > 1 ? `Save ${plan.beds.length} beds as ${title}` : `Save as ${title}`}
          </button>
        ))}
      </div>
    </>
  );
}

const FOUND = {
  row: 'from the row of',
  between: 'in proportion between',
  nearest: 'from the nearest row, of',
} as const;

const tidy = (value: number): string => String(Math.round(value * 1000) / 1000);

const metres = (mm: number): string => `${(mm / 1000).toFixed(1)} m`;

/** What each bed holds and each pass does, and what is left out. */
function Plan({ plan }: { readonly plan: MachinePlan }) {
  const sum = (key: 'travel' | 'travelBefore'): number =>
    plan.beds.reduce((all, { passes }) => all + passes.reduce((bed, pass) => bed + pass[key], 0), 0);
  return (
    <>
      {plan.beds.map(({ number, pieces, passes }) => (
        <table key={number}>
          <caption>
            Bed {number}
            {plan.beds.length > 1 && ` of ${plan.beds.length}`}: {pieces.join(', ').toLowerCase()}
          </caption>
          <thead>
            <tr>
              <th scope="col">Pass</th>
              <th scope="col">strokes</th>
              <th scope="col">length</th>
              <th scope="col">travel</th>
            </tr>
          </thead>
          <tbody>
            {passes.map(({ pass, marks, strokes, burnt, travel }) => (
              <tr key={marks.layer}>
                <th scope="row">
                  <span className="pass-colour" style={{ backgroundColor: marks.colour }} /> {pass.name}
                  <small>{[pass.power, pass.speed].filter(Boolean).join(', ')}</small>
                </th>
                <td>{strokes.length}</td>
                <td>{metres(burnt)}</td>
                <td>{metres(travel)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      ))}
      <p className="help">
        The head travels {metres(sum('travel'))} between strokes; in the order of the pattern it would be{' '}
        {metres(sum('travelBefore'))}.
      </p>
      {plan.leftOut.length > 0 && (
        <p className="help">
          Left out, in no pass: {plan.leftOut.map(({ layer, count }) => `${layerTitle(layer)} (${count})`).join(', ')}.
        </p>
      )}
      {plan.lacking.length > 0 && (
        <p className="caution">
          Caution. Single lines cannot draw {plan.lacking.join(' ')}: they are left out. Write them by hand, or rename
          the job.
        </p>
      )}
      <Notes notes={plan.notes} />
    </>
  );
}
