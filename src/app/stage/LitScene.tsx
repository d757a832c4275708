import { type ComponentProps, useMemo } from 'react';
import CoverScene from '../scene/CoverScene.tsx';
import { patternZone } from '../strip/patternZone.ts';

type LitSceneProps = Omit<ComponentProps<typeof CoverScene>, 'highlight'> & {
  /** Stretch of the strip to light up. */
  readonly highlight: string | null;
};

/** The scene with the part of the cover lit that belongs to a stretch of the strip. */
export default function LitScene({ highlight, ...props }: LitSceneProps) {
  const { design, point } = props;
  const lit = useMemo(
    () => (highlight === null ? null : patternZone(design, point, highlight)),
    [design, point, highlight],
  );
  return <CoverScene {...props} highlight={lit} />;
}
