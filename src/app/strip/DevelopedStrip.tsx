import { WithTerm } from '../fields/Term.tsx';
import { useWidth } from '../sheet/useExtent.ts';
import { useBench } from '../state/BenchContext.tsx';
import { ForeEdgeDetail } from './ForeEdgeDetail.tsx';
import { rulerTicks } from './rulerTicks.ts';
import { StripDrawing } from './StripDrawing.tsx';
import { outsideWords, stripLabels } from './stripLabels.ts';
import { stacked } from './stripLayout.ts';
import { Tuner } from './Tuner.tsx';
import { rangeTracks, track } from './track.ts';
import { UntunedNote } from './UntunedNote.tsx';
import { useUntuned } from './untunedDesign.ts';
import type { ZoneChoice } from './useZoneChoice.ts';

/** The whole wrap as one ruler, at the thick and the thin end of the leather, each stretch named, measured and tunable. */
export default function DevelopedStrip({ zones }: { readonly zones: ZoneChoice }) {
  const { design, lengths } = useBench(({ design, lengths }) => ({ design, lengths }));
  const untunedCover = useUntuned();
  const [ref, width] = useWidth<HTMLDivElement>();
  const untuned = untunedCover && track(untunedCover, 'width', 'thick', 'untuned');
  const tracks = rangeTracks(design, 'width', lengths);
  const outside = design.made.outside.width;
  const segment = tracks[0]!.segments.find(({ id }) => id === zones.chosen);

  return (
    <section className="strip" aria-labelledby="strip-title">
      <header className="row">
        <h2 id="strip-title">
          <WithTerm text="The wrap laid out" />
        </h2>
        <p>{outsideWords(design, 'width', lengths)}, cut edge to cut edge, book closed</p>
      </header>
      <div ref={ref} className="strip-frame">
        {width > 0 && (
          <StripDrawing
            design={design}
            tracks={tracks}
            untuned={untuned}
            untunedCover={untunedCover}
            labels={stripLabels(tracks[0]!.segments, tracks[1]?.segments ?? null, lengths).map(stacked)}
            ticks={rulerTicks(outside, lengths.units)}
            room={width}
            zones={zones}
          />
        )}
      </div>
      {width > 0 && (
        <ForeEdgeDetail tracks={tracks} untuned={untuned} room={width} stripScale={width / outside} zones={zones} />
      )}
      {untunedCover && <UntunedNote untuned={untunedCover} />}
      {segment === undefined ? (
        <p className="help not-printed">Press a part of the strip to change it here.</p>
      ) : (
        <Tuner segment={segment} />
      )}
    </section>
  );
}
