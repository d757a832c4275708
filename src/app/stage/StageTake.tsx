import { useMemo } from 'react';
import { heldScene } from '../scene/heldScene.ts';
import { useBench } from '../state/BenchContext.tsx';
import { useColourScheme } from '../state/useColourScheme.ts';
import TakeAway from '../take/TakeAway.tsx';
import type { TakenView } from '../take/takenView.ts';
import type { StageState } from './stageState.ts';

/** Takes away what the stage shows. */
export default function StageTake({ stage: { pose, point } }: { readonly stage: StageState }) {
  const { design, scheme } = useBench(({ design, view }) => ({ design, scheme: view.scheme }));
  const views = useMemo<readonly TakenView[]>(
    () => [{ name: '', pose, point, scene: async () => heldScene(design) }],
    [design, pose, point],
  );
  return <TakeAway views={views} scheme={useColourScheme(scheme)} />;
}
