import { useCallback, useRef, useState } from 'react';
import type { CoverDesign, Pose, RangePoint } from '../../core/index.ts';
import CoverScene from '../scene/CoverScene.tsx';
import type { PictureHandle } from '../scene/PictureTaker.tsx';
import type { PictureSize } from '../scene/pictureTiles.ts';
import type { SceneAbsence } from '../scene/sceneProps.ts';
import { VIEWPOINTS } from '../scene/viewpoints.ts';
import { useBench } from '../state/BenchContext.tsx';
import { filmOf } from './film.ts';
import type { FilmId } from './filmChoices.ts';
import { type FinishedFilm, openFilm } from './filmFile.ts';
import { pause, type TakingWork } from './useTaking.ts';
import { whenStopped } from './whenStopped.ts';

/** A film that is asked for. */
export interface Shooting {
  readonly id: FilmId;
  readonly seconds: number;
  readonly size: PictureSize;
  readonly background: string;
  readonly scheme: 'light' | 'dark';
  /** What the view shows. */
  readonly design: CoverDesign;
  readonly pose: Pose;
  readonly point: RangePoint;
  readonly tell: Parameters<TakingWork>[0];
  readonly signal: AbortSignal;
  readonly done: (film: FinishedFilm) => void;
  readonly failed: (why: unknown) => void;
}

/** Draws a film frame by frame in a scene of its own, so that the view stays as it is, and writes it. */
export default function FilmStudio({ shooting }: { readonly shooting: Shooting }) {
  const { design, point, scheme, failed } = shooting;
  const { look, lengths } = useBench(({ view, lengths }) => ({ look: view.look, lengths }));
  const [pose, setPose] = useState(shooting.pose);
  const scene = useRef<PictureHandle>(null);
  const awaited = useRef<{ readonly pose: Pose; readonly come: () => void }>(null);
  const begun = useRef(false);

  /** Shows a pose; resolves when the scene has taken it. */
  const show = useCallback((next: Pose): Promise<void> => {
    if (scene.current?.pose === next) return Promise.resolve();
    return new Promise((come) => {
      awaited.current = { pose: next, come };
      setPose(next);
    });
  }, []);
  const hold = useCallback(
    (handle: PictureHandle | null): void => {
      scene.current = handle;
      if (handle === null) return;
      if (handle.pose === awaited.current?.pose) awaited.current.come();
      if (begun.current) return;
      begun.current = true;
      shoot(shooting, handle, show).then(shooting.done, shooting.failed);
    },
    [shooting, show],
  );
  const onAbsence = useCallback(
    (reason: SceneAbsence | null): void => {
      if (reason === 'noWebGl' || reason === 'contextLost')
        failed(new Error('The graphics card gave no drawing context. Close other pages, and try it again.'));
    },
    [failed],
  );
  return (
    <div className="film-studio" aria-hidden="true" inert>
      <CoverScene
        design={design}
        pose={pose}
        point={point}
        slice={null}
        units={lengths.units}
        look={look}
        viewpoint={VIEWPOINTS[0]}
        onViewpointChange={ignore}
        onSlowFrames={ignore}
        onAbsence={onAbsence}
        colourScheme={scheme}
        formatLength={lengths.gap}
        describe=""
        marked={false}
        pictureRef={hold}
        filmed
      />
    </div>
  );
}

const ignore = (): void => {};

async function shoot(
  { id, seconds, size, background, design, pose, point, tell, signal }: Shooting,
  scene: PictureHandle,
  show: (pose: Pose) => Promise<void>,
): Promise<FinishedFilm> {
  const film = filmOf(id, seconds, design, point, pose, size.width / size.height);
  const file = await openFilm(size);
  const filming = scene.film(size, background);
  // Without its place on the page the scene takes no further pose.
  const stopped = whenStopped(signal);
  try {
    for (let i = 0; i < film.frames; i++) {
      await Promise.race([show(film.poseAt(i)), stopped]);
      const canvas = filming.frame(film.lensAt(i));
      await file.add(canvas);
      tell((i + 1) / film.frames);
      await Promise.race([pause(), stopped]);
    }
    return await file.finish();
  } catch (error) {
    await file.cancel();
    throw error;
  } finally {
    filming.end();
  }
}
