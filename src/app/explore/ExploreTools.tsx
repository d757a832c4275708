import { useId } from 'react';
import type { Overlay } from './overlays.ts';

interface ExploreToolsProps {
  readonly overlays: readonly Overlay[];
  readonly overlayId: string;
  readonly zoom: number;
  readonly onOverlay: (id: string) => void;
  readonly onZoom: (zoom: number) => void;
  readonly onPin: () => void;
}

/** Limits of the zoom, which changes by factors of 2. */
const CLOSEST = 1 / 8;
const WIDEST = 8;

/** The range of the curve, and the job laid over it. */
export function ExploreTools({ overlays, overlayId, zoom, onOverlay, onZoom, onPin }: ExploreToolsProps) {
  const id = useId();
  return (
    <p className="row explore-tools">
      <button type="button" disabled={zoom <= CLOSEST} onClick={() => onZoom(zoom / 2)}>
        Narrower range
      </button>
      <button type="button" disabled={zoom >= WIDEST} onClick={() => onZoom(zoom * 2)}>
        Wider range
      </button>
      <label htmlFor={`${id}-overlay`}>Lay over</label>
      <select id={`${id}-overlay`} value={overlayId} onChange={(event) => onOverlay(event.target.value)}>
        <option value="none">nothing</option>
        {overlays.map((overlay) => (
          <option key={overlay.id} value={overlay.id}>
            {overlay.name}
          </option>
        ))}
      </select>
      <button type="button" onClick={onPin}>
        Pin this job
      </button>
    </p>
  );
}
