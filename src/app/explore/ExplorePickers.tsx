import { useId } from 'react';
import { EXPLORE_RESULTS, type ExploreField } from '../../core/index.ts';
import { fieldHeading, fieldName } from './fieldWords.ts';
import type { Overlay } from './overlays.ts';

interface ExplorePickersProps {
  readonly fields: readonly ExploreField[];
  readonly fieldId: string;
  readonly resultId: string;
  readonly overlays: readonly Overlay[];
  readonly overlayId: string;
  readonly zoom: number;
  readonly onField: (id: string) => void;
  readonly onResult: (id: string) => void;
  readonly onOverlay: (id: string) => void;
  readonly onZoom: (zoom: number) => void;
  readonly onPin: () => void;
}

/** Limits of the zoom, which changes by factors of 2. */
const CLOSEST = 1 / 8;
const WIDEST = 8;

/** Choice of the field, the result, the range and the job laid over. */
export function ExplorePickers(props: ExplorePickersProps) {
  const { fields, fieldId, resultId, overlays, overlayId, zoom, onField, onResult, onOverlay, onZoom, onPin } = props;
  const id = useId();
  return (
    <div className="row explore-picks">
      <p className="row explore-pick">
        <label htmlFor={`${id}-field`}>Change</label>
        <select id={`${id}-field`} value={fieldId} onChange={(event) => onField(event.target.value)}>
          {grouped(fields, fieldHeading).map(([heading, members]) => (
            <optgroup key={heading} label={heading}>
              {members.map((field) => (
                <option key={field.id} value={field.id}>
                  {fieldName(field)}
                </option>
              ))}
            </optgroup>
          ))}
        </select>
      </p>
      <p className="row explore-pick">
        <label htmlFor={`${id}-result`}>and watch</label>
        <select
          id={`${id}-result`}
          data-pick="result"
          value={resultId}
          onChange={(event) => onResult(event.target.value)}
        >
          {grouped(EXPLORE_RESULTS, ({ group }) => group).map(([group, members]) => (
            <optgroup key={group} label={`${group.charAt(0).toUpperCase()}${group.slice(1)}`}>
              {members.map((result) => (
                <option key={result.id} value={result.id}>
                  {result.title}
                </option>
              ))}
            </optgroup>
          ))}
        </select>
      </p>
      <p className="row explore-pick">
        <label htmlFor={`${id}-overlay`}>Lay over</label>
        <select id={`${id}-overlay`} value={overlayId} onChange={(event) => onOverlay(event.target.value)}>
          <option value="none">nothing</option>
          {overlays.map((overlay) => (
            <option key={overlay.id} value={overlay.id}>
              {overlay.name}
            </option>
          ))}
        </select>
      </p>
      <p className="row explore-pick">
        <button type="button" onClick={onPin}>
          Pin this job
        </button>
        <button type="button" disabled={zoom <= CLOSEST} onClick={() => onZoom(zoom / 2)}>
          Narrower range
        </button>
        <button type="button" disabled={zoom >= WIDEST} onClick={() => onZoom(zoom * 2)}>
          Wider range
        </button>
      </p>
    </div>
  );
}

function grouped<T>(items: readonly T[], headingOf: (item: T) => string): readonly (readonly [string, readonly T[]])[] {
  const headings = [...new Set(items.map(headingOf))];
  return headings.map((heading) => [heading, items.filter((item) => headingOf(item) === heading)]);
}
