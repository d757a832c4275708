import { Choice } from '../../fields/Choice.tsx';
import { PlainField } from '../../fields/PlainField.tsx';
import type { MachineDraft } from './machineDraft.ts';
import { PassFields } from './PassFields.tsx';

interface MachineFieldsProps {
  readonly draft: MachineDraft;
  readonly issues: ReadonlyMap<string, string>;
  readonly put: (draft: MachineDraft) => void;
}

const NEW_PASS = { name: '', layers: [], colour: '', layer: '', dxfColour: '', pen: '', power: '', speed: '' };

/** Everything about one machine, as its maker types it. */
export function MachineFields({ draft, issues, put }: MachineFieldsProps) {
  const issueAt = (path: string): readonly string[] =>
    [...issues].flatMap(([at, words]) => (at === path ? [words] : []));
  const change = (part: Partial<MachineDraft>): void => put({ ...draft, ...part });
  const field = (
    key: 'name' | 'width' | 'height' | 'margin' | 'gap' | 'tolerance',
    path: string,
    title: string,
    help: string,
  ) => (
    <PlainField
      title={title}
      help={help}
      text={draft[key]}
      change={(text) => change({ [key]: text })}
      issues={issueAt(path)}
    />
  );
  return (
    <>
      <section aria-labelledby="machine-bed">
        <h3 id="machine-bed">Machine</h3>
        {field('name', 'name', 'Name', 'In your own words.')}
        {field('width', 'bed.width_mm', 'Bed width', 'How far the head reaches across. Without a unit: mm.')}
        {field('height', 'bed.height_mm', 'Bed height', 'How far the head reaches along. Without a unit: mm.')}
        {field('margin', 'margin_mm', 'Margin', 'Kept free along every edge of the bed.')}
        {field('gap', 'gap_mm', 'Gap', 'Left between pieces, from cut to cut.')}
      </section>
      <section aria-labelledby="machine-kerfs">
        <h3 id="machine-kerfs">Kerf by leather</h3>
        <p className="help">Read it from a kerf test. Between two thicknesses it is taken in proportion.</p>
        {draft.kerfs.map((row, i) => {
          const putRow = (part: Partial<typeof row>): void =>
            change({ kerfs: draft.kerfs.with(i, { ...row, ...part }) });
          return (
            // biome-ignore lint/suspicious/noArrayIndexKey: a row that is being typed has only its place in the list
            <div className="listed" key={i}>
              <PlainField
                title={`Kerf ${i + 1}, leather`}
                help="In your own words."
                text={row.leather}
                change={(leather) => putRow({ leather })}
                issues={[...issueAt(`kerfs.${i}.leather`), ...issueAt(`kerfs.${i}`)]}
              />
              <PlainField
                title={`Kerf ${i + 1}, thickness`}
                text={row.thickness}
                change={(thickness) => putRow({ thickness })}
                issues={issueAt(`kerfs.${i}.thickness_mm`)}
              />
              <PlainField
                title={`Kerf ${i + 1}, width`}
                help="What the beam burns away, 0 to 2 mm."
                text={row.kerf}
                change={(kerf) => putRow({ kerf })}
                issues={issueAt(`kerfs.${i}.kerf_mm`)}
              />
              <button type="button" className="quiet" onClick={() => change({ kerfs: draft.kerfs.toSpliced(i, 1) })}>
                Take out<span className="only-heard"> kerf {i + 1}</span>
              </button>
            </div>
          );
        })}
        <button
          type="button"
          onClick={() => change({ kerfs: [...draft.kerfs, { leather: '', thickness: '', kerf: '' }] })}
        >
          Add a leather
        </button>
      </section>
      <section aria-labelledby="machine-passes">
        <h3 id="machine-passes">Passes</h3>
        <p className="help">In the order of the work: marks first, then holes and slits, the cut edge last.</p>
        {draft.passes.map((pass, i) => (
          <PassFields
            // biome-ignore lint/suspicious/noArrayIndexKey: a pass that is being typed has only its place in the list
            key={i}
            index={i}
            count={draft.passes.length}
            pass={pass}
            issueAt={issueAt}
            put={(next) => change({ passes: draft.passes.with(i, next) })}
            move={(to) => change({ passes: draft.passes.toSpliced(i, 1).toSpliced(to, 0, pass) })}
            takeOut={() => change({ passes: draft.passes.toSpliced(i, 1) })}
          />
        ))}
        <button
          type="button"
          onClick={() =>
            change({ passes: [...draft.passes, { ...NEW_PASS, name: `Pass ${draft.passes.length + 1}` }] })
          }
        >
          Add a pass
        </button>
      </section>
      <section aria-labelledby="machine-files">
        <h3 id="machine-files">Files</h3>
        <Choice
          title="Words"
          options={[
            { value: 'strokes', label: 'as single lines' },
            { value: 'none', label: 'left out' },
          ]}
          chosen={draft.words}
          choose={(words) => change({ words: words as MachineDraft['words'] })}
          issues={issueAt('words')}
        />
        <Choice
          title="Curves"
          options={[
            { value: 'arcs', label: 'as arcs' },
            { value: 'points', label: 'as points' },
          ]}
          chosen={draft.curves}
          choose={(curves) => change({ curves: curves as MachineDraft['curves'] })}
        />
        {draft.curves === 'points' &&
          field('tolerance', 'curves.tolerance_mm', 'Points off the curve', 'At most, between two points.')}
        <Choice
          title="DXF"
          options={[
            { value: 'R12', label: 'R12' },
            { value: '2000', label: '2000' },
          ]}
          chosen={draft.dxf}
          choose={(dxf) => change({ dxf: dxf as MachineDraft['dxf'] })}
        />
        <label className="row">
          <input type="checkbox" checked={draft.crosses} onChange={() => change({ crosses: !draft.crosses })} />
          <span>Crosses for turning the sheet over</span>
        </label>
      </section>
    </>
  );
}
