import { PlainField } from '../../fields/PlainField.tsx';
import { LAYER_TITLES } from './layerTitles.ts';
import type { PassDraft } from './machineDraft.ts';

interface PassFieldsProps {
  readonly index: number;
  readonly count: number;
  readonly pass: PassDraft;
  readonly issueAt: (path: string) => readonly string[];
  readonly put: (pass: PassDraft) => void;
  readonly move: (to: number) => void;
  readonly takeOut: () => void;
}

/** One pass of a machine: what it cuts or draws, how the files mark it, and the maker's own notes. */
export function PassFields({ index, count, pass, issueAt, put, move, takeOut }: PassFieldsProps) {
  const path = (field: string): string => `passes.${index}.${field}`;
  const which = <span className="only-heard"> pass {index + 1}</span>;
  const toggle = (layer: string): void =>
    put({
      ...pass,
      layers: pass.layers.includes(layer) ? pass.layers.filter((each) => each !== layer) : [...pass.layers, layer],
    });
  const field = (key: Exclude<keyof PassDraft, 'layers'>, title: string, help: string, placeholder?: string) => (
    <PlainField
      title={`Pass ${index + 1}, ${title}`}
      help={help}
      placeholder={placeholder}
      text={pass[key]}
      change={(text) => put({ ...pass, [key]: text })}
      issues={issueAt(path(key))}
    />
  );
  return (
    <div className="listed">
      {field('name', 'name', 'In your own words.')}
      <fieldset className="choice">
        <legend>Pass {index + 1} takes</legend>
        <div className="row choice-row">
          {LAYER_TITLES.map(([layer, title]) => (
            <label key={layer}>
              <input type="checkbox" checked={pass.layers.includes(layer)} onChange={() => toggle(layer)} />
              <span>{title}</span>
            </label>
          ))}
        </div>
        <p className="issue">{issueAt(path('layers')).join(' ')}</p>
      </fieldset>
      {field('power', 'power', 'Your own note: it is shown with the pass and never read.', 'no note')}
      {field('speed', 'speed', 'Your own note: it is shown with the pass and never read.', 'no note')}
      <details>
        <summary>How the files mark pass {index + 1}</summary>
        {field('colour', 'colour', 'Of its lines in SVG, as #00ff00.', 'that of its first layer')}
        {field('layer', 'layer name', 'In SVG and DXF: capitals, figures, _ and -.', 'that of its first layer')}
        {field('dxfColour', 'colour number', 'In DXF, 1 to 255.', 'that of its first layer')}
        {field('pen', 'pen', 'In HPGL, 1 to 99.', String(index + 1))}
      </details>
      <div className="row">
        <button type="button" className="quiet" disabled={index === 0} onClick={() => move(index - 1)}>
          Earlier{which}
        </button>
        <button type="button" className="quiet" disabled={index === count - 1} onClick={() => move(index + 1)}>
          Later{which}
        </button>
        <button type="button" className="quiet" onClick={takeOut}>
          Take out{which}
        </button>
      </div>
    </div>
  );
}
