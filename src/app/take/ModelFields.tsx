import { useId, useState } from 'react';
import { MODEL_KINDS } from './modelKinds.ts';

interface ModelFieldsProps {
  readonly isBusy: boolean;
  readonly onTake: (kind: (typeof MODEL_KINDS)[number]) => Promise<void>;
}

/** A model of the cover for other programs. */
export function ModelFields({ isBusy, onTake }: ModelFieldsProps) {
  const [chosen, setChosen] = useState(0);
  const id = useId();
  const kind = MODEL_KINDS[chosen]!;
  return (
    <fieldset>
      <legend>3D model</legend>
      <div className="row take-row">
        <label htmlFor={id}>File</label>
        <select id={id} value={chosen} disabled={isBusy} onChange={(event) => setChosen(Number(event.target.value))}>
          {MODEL_KINDS.map(({ id: name, title }, i) => (
            <option key={name} value={i}>
              {title}
            </option>
          ))}
        </select>
        <button type="button" disabled={isBusy} onClick={() => void onTake(kind)}>
          Save model
        </button>
      </div>
      <p className="help">{kind.for} In metres, in its true size.</p>
    </fieldset>
  );
}
