import { useId } from 'react';
import type { PictureUse } from '../../../artwork/readArtwork.ts';
import type { Artwork } from '../../../core/index.ts';
import { Choice } from '../../fields/Choice.tsx';
import { openedFile, useArtworkFiles } from './useArtworkFiles.ts';

/** The middle grey: where the slider stands until it is moved. */
const MIDDLE = 128;

/** How the drawing of a picture is made of it, as long as the page has its file, and what of a file is left out. */
export function PictureFields({ artwork }: { readonly artwork: Artwork }) {
  const { reading, retake } = useArtworkFiles();
  const slider = useId();
  const file = openedFile(artwork.id);
  const take = (use: PictureUse): void => retake(artwork, use);
  if (file === undefined)
    return <p className="help">To trace it otherwise or to see what was left out, open its file again.</p>;
  const { use } = file;
  const threshold = use.as === 'lines' ? (use.threshold ?? null) : null;
  return (
    <>
      {file.leftOut.length > 0 && <p className="help">Left out of its file: {file.leftOut.join('; ')}.</p>}
      {file.isPicture && (
        <Choice
          title="The picture is"
          options={[
            { value: 'lines', label: 'traced to lines' },
            { value: 'picture', label: 'laid as it is' },
          ]}
          chosen={use.as}
          choose={(as) => take(as === 'picture' ? { as: 'picture' } : { as: 'lines' })}
          notes={reading.status === 'reading' ? ['It is being read.'] : []}
          issues={reading.status === 'refused' ? [reading.why] : []}
        />
      )}
      {file.isPicture && use.as === 'lines' && (
        <div className="field tall">
          <label htmlFor={slider}>Lines run round what is darker than</label>
          <input
            id={slider}
            type="range"
            min={1}
            max={255}
            value={threshold ?? MIDDLE}
            aria-valuetext={
              threshold === null ? 'found from the picture' : `${Math.round((100 * threshold) / 255)} % light`
            }
            onChange={({ target }) => take({ as: 'lines', threshold: Number(target.value) })}
          />
          {threshold !== null && (
            <button type="button" className="quiet" onClick={() => take({ as: 'lines' })}>
              Find it from the picture
            </button>
          )}
        </div>
      )}
    </>
  );
}
