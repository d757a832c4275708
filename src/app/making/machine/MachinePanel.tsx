import { useState } from 'react';
import { fileName } from '../../../output/fileName.ts';
import { machineText, openMachineFile } from '../../../output/machine/machineProfile.ts';
import { FileButton } from '../../fields/FileButton.tsx';
import { saveFile } from '../../state/saveFile.ts';
import { Panel } from '../PanelParts.tsx';
import { KerfTest } from './KerfTest.tsx';
import { layerTitle } from './layerTitles.ts';
import { MachineFields } from './MachineFields.tsx';
import { type MachineDraft, machineDraft, machineDraftSchema, readMachine } from './machineDraft.ts';
import { newId, useMachines } from './useMachines.ts';

/** What every piece needs, inside out, for the maker to change; how a pass is marked and run is the maker's own. */
const WORK_INSIDE_OUT = [['MARK'], ['HOLE', 'SLIT'], ['CUT']].map((layers) => ({
  name: layers.map(layerTitle).join(' and '),
  layers,
}));

/** The maker's own machines: add, edit, keep as a file, try the kerf. Nothing of the machine itself is preset. */
export default function MachinePanel() {
  const { machines, isKept, put } = useMachines();
  const [openId, open] = useState<string | null>(machines[0]?.id ?? null);
  const [removed, setRemoved] = useState<{ readonly machine: MachineDraft; readonly at: number } | null>(null);
  const [refused, setRefused] = useState<readonly string[]>([]);
  const chosen = machines.find(({ id }) => id === openId) ?? machines[0];
  const read = chosen === undefined ? null : readMachine(chosen);
  const change = (next: MachineDraft): void => put(machines.map((each) => (each.id === next.id ? next : each)));
  const add = (machine: MachineDraft): void => {
    put([...machines, machine]);
    open(machine.id);
    setRefused([]);
  };
  const remove = (machine: MachineDraft): void => {
    const at = machines.indexOf(machine);
    setRemoved({ machine, at });
    put(machines.toSpliced(at, 1));
    open(machines[at === 0 ? 1 : at - 1]?.id ?? null);
  };
  const openFile = async (file: File): Promise<void> => {
    const parsed = await openMachineFile(file);
    if (parsed.ok) add(machineDraft(parsed.profile, newId(machines)));
    else setRefused(parsed.issues.map(({ path, message }) => `${path}: ${message}`));
  };
  return (
    <Panel
      name="Machines"
      fields={
        chosen === undefined ? null : (
          <MachineFields key={chosen.id} draft={chosen} issues={read!.issues} put={change} />
        )
      }
    >
      <div className="row">
        <button
          type="button"
          onClick={() => {
            const id = newId(machines);
            add(machineDraftSchema.parse({ id, name: `Machine ${id}`, passes: WORK_INSIDE_OUT }));
          }}
        >
          Add a machine
        </button>
        <FileButton title="Open a machine file" asks="Machine file" onFile={(file) => void openFile(file)} />
      </div>
      {refused.length > 0 && (
        <div role="alert">
          <p className="issue">This file is not opened; your machines are as they were.</p>
          <ul className="bench-notes">
            {refused.map((line) => (
              <li key={line}>{line}</li>
            ))}
          </ul>
        </div>
      )}
      {!isKept && <p className="caution">Caution. This browser does not keep your machines. Save each as a file.</p>}
      {removed !== null && (
        <p role="status">
          {removed.machine.name} was taken out.{' '}
          <button
            type="button"
            className="quiet"
            onClick={() => {
              put(machines.toSpliced(removed.at, 0, removed.machine));
              open(removed.machine.id);
              setRemoved(null);
            }}
          >
            Put it back
          </button>
        </p>
      )}
      {machines.length === 0 && (
        <p className="help">
          No machine yet. Add the cutter or laser that you use: its bed, its kerf by leather, its passes. All names and
          colours are your own. The template then lays the pieces on its bed.
        </p>
      )}
      {machines.length > 1 && (
        <fieldset className="choice">
          <legend>Your machines</legend>
          <div className="row choice-row">
            {machines.map(({ id, name }) => (
              <label key={id}>
                <input type="radio" name="machine" checked={id === chosen?.id} onChange={() => open(id)} />
                <span>{name || 'without a name'}</span>
              </label>
            ))}
          </div>
        </fieldset>
      )}
      {chosen !== undefined && read !== null && (
        <>
          <h3>{chosen.name || 'Without a name'}</h3>
          {read.profile === null ? (
            <p className="issue">
              {read.issues.size === 1 ? 'One entry is' : `${read.issues.size} entries are`} missing or wrong. The kerf
              test is here, and the template offers this machine, once all are right.
            </p>
          ) : (
            <table>
              <caption>Passes, in the order of the work</caption>
              <thead>
                <tr>
                  <th scope="col">Pass</th>
                  <th scope="col">takes</th>
                  <th scope="col">power</th>
                  <th scope="col">speed</th>
                </tr>
              </thead>
              <tbody>
                {read.profile.passes.map(({ name, layers, power, speed }) => (
                  <tr key={name + layers.join()}>
                    <th scope="row">{name}</th>
                    <td>{layers.map(layerTitle).join(', ')}</td>
                    <td>{power || 'no note'}</td>
                    <td>{speed || 'no note'}</td>
                  </tr>
                ))}
              </tbody>
            </table>
          )}
          {read.profile?.passes.length === 0 && <p className="help">No pass yet. Add one, and choose what it takes.</p>}
          <div className="row">
            <button
              type="button"
              disabled={read.profile === null}
              onClick={() =>
                saveFile(fileName(chosen.name, 'machine.json'), machineText(read.profile!), 'application/json')
              }
            >
              Save this machine as a file
            </button>
            <button type="button" className="quiet" onClick={() => remove(chosen)}>
              Take this machine out
            </button>
          </div>
          {read.profile !== null && (
            <KerfTest
              key={chosen.id}
              profile={read.profile}
              put={(profile) => change(machineDraft(profile, chosen.id))}
            />
          )}
        </>
      )}
    </Panel>
  );
}
