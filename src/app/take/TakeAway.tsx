import { lazy, Suspense, useEffect, useId, useRef, useState } from 'react';
import { fileName } from '../../output/fileName.ts';
import { useBench } from '../state/BenchContext.tsx';
import { saveFile } from '../state/saveFile.ts';
import { FilmFields } from './FilmFields.tsx';
import type { Shooting } from './FilmStudio.tsx';
import type { FinishedFilm } from './filmFile.ts';
import { ModelFields } from './ModelFields.tsx';
import { makeModel } from './makeModel.ts';
import { PictureFields } from './PictureFields.tsx';
import { TakingNote } from './TakingNote.tsx';
import type { TakenView } from './takenView.ts';
import { pictureSize, takePicture } from './takePicture.ts';
import { useTaking } from './useTaking.ts';
import './take.css';

const FilmStudio = lazy(() => import('./FilmStudio.tsx'));

interface TakeAwayProps {
  /** One or more. */
  readonly views: readonly TakenView[];
  readonly scheme: 'light' | 'dark';
}

/** What lies behind the bench, as on the screen. */
const AIR = { light: '#f6f1e6', dark: '#2e2a25' } as const;

const NO_SCENE =
  'There is no 3D view to take it of. Wait until it is drawn; without WebGL 2 this browser draws none, and another is needed.';

/** Opens the one place where a cover is taken away as a picture, a model or a film. */
export default function TakeAway({ views, scheme }: TakeAwayProps) {
  const [isOpen, setOpen] = useState(false);
  return (
    <>
      <button type="button" className="quiet" onClick={() => setOpen(true)}>
        Take away
      </button>
      {isOpen && <TakeDialog views={views} scheme={scheme} onClose={() => setOpen(false)} />}
    </>
  );
}

function TakeDialog({ views, scheme, onClose }: TakeAwayProps & { readonly onClose: () => void }) {
  const { design, good } = useBench(({ design, history }) => ({ design, good: history.good }));
  const { document, job } = good;
  const dialog = useRef<HTMLDialogElement>(null);
  const { taking, take, cancel } = useTaking();
  const [shooting, setShooting] = useState<Shooting | null>(null);
  const [name, setName] = useState(views[0]!.name);
  const id = useId();
  useEffect(() => {
    if (dialog.current?.open === false) dialog.current.showModal();
  }, []);
  const view = views.find((each) => each.name === name) ?? views[0]!;
  const isBusy = taking.status === 'taking';

  const picture = (side: number | null): Promise<void> =>
    take('picture', async (...how) => {
      const scene = await view.scene();
      if (scene === null) throw new Error(NO_SCENE);
      const size = pictureSize(scene.shownSize(), side);
      const blob = await takePicture(scene, size, AIR[scheme], ...how);
      saveFile(fileName(document.name, 'png', [`${size.width}`, view.name]), blob, blob.type);
    });
  const model: Parameters<typeof ModelFields>[0]['onTake'] = ({ id: kind, ending, type }) =>
    take('model', async (_, signal) => {
      saveFile(
        fileName(document.name, ending, [kind === 'plain' ? 'plain' : '']),
        await makeModel(job, kind, signal),
        type,
      );
    });
  const film: Parameters<typeof FilmFields>[0]['onTake'] = (asked) =>
    take('film', async (tell, signal) => {
      const { pose, point } = view;
      const { bytes, ending, type } = await new Promise<FinishedFilm>((done, failed) =>
        setShooting({ ...asked, background: AIR[scheme], scheme, design, pose, point, tell, signal, done, failed }),
      ).finally(() => setShooting(null));
      saveFile(fileName(document.name, ending, [asked.id, view.name]), new Uint8Array(bytes), type);
    });

  return (
    <dialog
      ref={dialog}
      className="take-away not-printed"
      aria-labelledby={`${id}-title`}
      // A key pressed by chance would throw away minutes of work, which has a button to stop it.
      onCancel={(event) => isBusy && event.preventDefault()}
      onClose={onClose}
    >
      <h2 id={`${id}-title`}>Take it away</h2>
      {views.length > 1 && (
        <p className="row take-row">
          <label htmlFor={`${id}-view`}>Book</label>
          <select id={`${id}-view`} value={name} disabled={isBusy} onChange={(event) => setName(event.target.value)}>
            {views.map((each) => (
              <option key={each.name}>{each.name}</option>
            ))}
          </select>
        </p>
      )}
      <PictureFields view={view} isBusy={isBusy} onTake={picture} />
      <ModelFields isBusy={isBusy} onTake={model} />
      <FilmFields isBusy={isBusy} onTake={film} />
      <TakingNote taking={taking} cancel={cancel} />
      <p className="row dialog-buttons">
        <button type="button" disabled={isBusy} onClick={() => dialog.current?.close()}>
          Close
        </button>
      </p>
      {shooting !== null && (
        <Suspense>
          <FilmStudio shooting={shooting} />
        </Suspense>
      )}
    </dialog>
  );
}
