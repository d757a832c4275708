import { type RefObject, useCallback, useLayoutEffect, useRef, useState } from 'react';
import type { Vec2 } from '../../core/index.ts';
import Loupe, { type LoupePlace } from '../loupe/Loupe.tsx';
import type { EdgeHandle } from '../scene/marks/EdgePicker.tsx';
import { useBench } from '../state/BenchContext.tsx';

interface StageLoupeProps {
  readonly place: LoupePlace;
  readonly setPlace: (place: LoupePlace | null) => void;
  /** Shown while an edge is pointed at; it takes no focus then. */
  readonly isHovering: boolean;
  /** Finds places of the edges in the picture; empty while there is no scene. */
  readonly edges: RefObject<EdgeHandle | null>;
  /** Called with each frame of the scene, which may have moved the edges. */
  readonly look: { current: () => void };
}

/** Where the loupe's edge is in the picture: from end to end, and from the middle of the glass. */
interface Aim {
  readonly way?: Vec2;
  readonly over?: Vec2;
}

/** The loupe over the picture, with a line to the place that it shows. */
export default function StageLoupe({ place, setPlace, isHovering, edges, look }: StageLoupeProps) {
  const design = useBench(({ design }) => design);
  const frame = useRef<HTMLDivElement>(null);
  const [aim, setAim] = useState<Aim>({});
  const { edge, at } = place;
  const take = useCallback((): void => {
    const glass = frame.current?.querySelector('.loupe-glass');
    const picture = frame.current?.parentElement;
    const [here, start, end] = [at, 0, 1].map((along) => edges.current?.place({ edge, at: along }) ?? null);
    if (!glass || !picture || !here || !start || !end) {
      setAim((last) => ('over' in last ? {} : last));
      return;
    }
    const [round, whole] = [glass.getBoundingClientRect(), picture.getBoundingClientRect()];
    const over: Vec2 = [
      Math.round(whole.left + here.x - (round.left + round.width / 2)),
      Math.round(whole.top + here.y - (round.top + round.height / 2)),
    ];
    setAim((last) =>
      last.over?.[0] === over[0] && last.over[1] === over[1] ? last : { over, way: [end.x - start.x, end.y - start.y] },
    );
  }, [edges, edge, at]);
  useLayoutEffect(() => {
    look.current = take;
    take();
    // The glass comes later than its frame the first time.
    const observer = new ResizeObserver(take);
    if (frame.current !== null) observer.observe(frame.current);
    return () => {
      observer.disconnect();
      look.current = () => {};
    };
  }, [look, take]);
  return (
    <div ref={frame} className="stage-loupe" data-hovering={isHovering || undefined}>
      <Loupe
        key={String(isHovering)}
        {...place}
        {...aim}
        design={design}
        takesFocus={!isHovering}
        onChange={(change) => setPlace({ ...place, ...change })}
        onClose={() => setPlace(null)}
      />
    </div>
  );
}
