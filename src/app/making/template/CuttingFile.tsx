import { LAYERS, type Layer } from '../../../core/index.ts';
import { kerfNotes } from '../../../output/kerf.ts';
import { LASER_CAUTION } from '../../../output/laserCaution.ts';
import { LAYER_NAMES } from '../../../output/layerNames.ts';
import { layerFileName } from '../../../output/template/templateName.ts';
import { PlainField } from '../../fields/PlainField.tsx';
import { useBench } from '../../state/BenchContext.tsx';
import { addressOf } from '../../state/place.ts';
import { saveFile } from '../../state/saveFile.ts';
import { MakingNote } from '../MakingNote.tsx';
import { readMachine } from '../machine/machineDraft.ts';
import { useMachines } from '../machine/useMachines.ts';
import { useMaking } from '../useMaking.ts';
import { MachineWork } from './MachineWork.tsx';
import type { TemplateParts } from './templateParts.ts';

/** The pattern as a file for a cutter: for one of the maker's machines, or without one by layers, in mm. */
export function CuttingFile(parts: TemplateParts) {
  const { choice, choose, isTracing } = parts;
  const { machines } = useMachines();
  const chosen = isTracing ? undefined : machines.find(({ id }) => id === choice.machine);
  const profile = chosen === undefined ? null : readMachine(chosen).profile;
  return (
    <section aria-labelledby="cutting-file">
      <h3 id="cutting-file">{isTracing ? 'As a file' : 'For a cutter'}</h3>
      {!isTracing && (
        <div className="field tall">
          <label htmlFor="template-machine">Machine</label>
          <select
            id="template-machine"
            value={chosen?.id ?? ''}
            onChange={({ target: { value } }) => choose({ machine: value })}
          >
            <option value="">none: by layers</option>
            {machines.map(({ id, name }) => (
              <option key={id} value={id}>
                {name || 'without a name'}
              </option>
            ))}
          </select>
          <p className="help">
            <a className="link" href={addressOf('workbench', 'machine')}>
              Your machines
            </a>{' '}
            lay the pieces on a bed, pass by pass.
          </p>
        </div>
      )}
      {chosen === undefined ? (
        <LayerFiles {...parts} />
      ) : profile === null ? (
        <p className="issue">
          This machine has entries missing or wrong.{' '}
          <a className="link" href={addressOf('workbench', 'machine')}>
            Correct them
          </a>{' '}
          first.
        </p>
      ) : (
        <MachineWork {...parts} profile={profile} />
      )}
      {LASER_CAUTION.map((caution) => (
        <p key={caution} className="caution">
          {caution}
        </p>
      ))}
    </section>
  );
}

/** One SVG or DXF of the chosen layers, for any program. */
function LayerFiles(parts: TemplateParts) {
  const { choice, choose, drawing, mirrored, isTracing, isLoading, layers, variants } = parts;
  const design = useBench(({ design }) => design);
  const [making, make] = useMaking();
  const { issues } = parts.settings;
  // A tracing is not cut.
  const kerf_mm = isTracing ? undefined : parts.settings.kerf_mm;
  const options = { layers, mirrored, kerf_mm };
  const isIdle =
    making.status !== 'making' && !isLoading && (isTracing || issues.kerf === undefined) && layers.length > 0;
  const named = (ending: 'svg' | 'dxf'): string =>
    layerFileName({ job: design.job.name, isTracing, variants }, ending, { kerf_mm, layers });
  const saveSvg = async (): Promise<void> => {
    const { patternSvg } = await import('../../../output/svg/patternSvg.ts');
    saveFile(named('svg'), patternSvg(drawing, options), 'image/svg+xml');
  };
  const saveDxf = async (): Promise<void> => {
    const { patternDxf } = await import('../../../output/dxf/patternDxf.ts');
    saveFile(named('dxf'), patternDxf(drawing, options), 'image/vnd.dxf');
  };
  const isTooled = drawing.pieces.some((piece) => piece.layers.area.length > 0);
  const offered = LAYERS.filter((layer) =>
    isTracing || layer === 'area' || layer === 'tooling'
      ? drawing.pieces.some(({ layers }) => layers[layer].length > 0)
      : true,
  );
  const toggle = (layer: Layer): void =>
    choose(
      layer === 'area' && !isTracing
        ? { hasAreas: !choice.hasAreas }
        : { leftOut: LAYERS.filter((each) => choice.leftOut.includes(each) !== (each === layer)) },
    );
  return (
    <>
      <fieldset className="choice">
        <legend>Layers</legend>
        <div className="row choice-row">
          {offered.map((layer) => (
            <label key={layer}>
              <input type="checkbox" checked={layers.includes(layer)} onChange={() => toggle(layer)} />
              <span>{LAYER_NAMES[layer]}</span>
            </label>
          ))}
        </div>
        <p className={layers.length === 0 ? 'issue' : 'help'}>
          {layers.length === 0
            ? 'Choose one layer at least.'
            : `Of the drawing here and of both files. There each has a colour of its own. Marks come first in each piece, then holes and slits,${isTooled ? ' the tooling,' : ''} and the cut edge last. Without words the files carry no lettering at all.`}
          {isTooled &&
            !isTracing &&
            ' The tooling areas are always in the drawing here and on paper, in the files only where they are chosen.'}
        </p>
      </fieldset>
      {!isTracing && (
        <PlainField
          title="Kerf"
          help="Width that the beam burns away: the cut edge moves out by half of it, holes and slits become smaller by it. Without a unit: mm."
          placeholder="no laser"
          text={choice.kerf}
          change={(kerf) => choose({ kerf })}
          issues={issues.kerf === undefined ? [] : [issues.kerf]}
        />
      )}
      {kerf_mm !== undefined &&
        kerfNotes(drawing, kerf_mm).map((note) => (
          <p key={note} className="caution">
            Caution. {note}
          </p>
        ))}
      <div className="row">
        <button type="button" disabled={!isIdle} onClick={() => make('SVG', saveSvg)}>
          Save as SVG
        </button>
        <button type="button" disabled={!isIdle} onClick={() => make('DXF', saveDxf)}>
          Save as DXF
        </button>
      </div>
      <MakingNote making={making} />
    </>
  );
}
