import { useBench } from '../state/BenchContext.tsx';
import { ForeEdgeDetail } from './ForeEdgeDetail.tsx';
import { GhostNote } from './GhostNote.tsx';
import { lane, rangeLanes } from './lane.ts';
import { rulerTicks } from './rulerTicks.ts';
import { StripDrawing } from './StripDrawing.tsx';
import { stripLabels } from './stripLabels.ts';
import { stacked } from './stripLayout.ts';
import { Tuner } from './Tuner.tsx';
import { useWidth } from './useExtent.ts';
import { useGhost } from './useGhost.ts';
import type { ZoneChoice } from './useZoneChoice.ts';

/** The whole wrap as one ruler, at the thick and the thin end of the leather, each stretch named, measured and tunable. */
export default function DevelopedStrip({ zones }: { readonly zones: ZoneChoice }) {
  const { design, lengths } = useBench();
  const [ref, width] = useWidth<HTMLDivElement>();
  const ghostDesign = useGhost();
  const ghost = ghostDesign && lane(ghostDesign, 'width', 'thick', 'untuned');
  const lanes = rangeLanes(design, 'width', lengths);
  const outside = design.pieces.outside.width;
  const segment = lanes[0]!.segments.find(({ id }) => id === zones.chosen);

  return (
    <section className="strip" aria-labelledby="strip-title">
      <header>
        <h2 id="strip-title">The wrap laid out</h2>
        <p>outside {lengths.cut(outside)}, cut edge to cut edge, book closed</p>
      </header>
      <div ref={ref} className="strip-frame">
        {width > 0 && (
          <StripDrawing
            design={design}
            lanes={lanes}
            ghost={ghost}
            ghostDesign={ghostDesign}
            labels={stripLabels(lanes[0]!.segments, lanes[1]?.segments ?? null, lengths).map(stacked)}
            ticks={rulerTicks(outside, lengths.units)}
            room={width}
            zones={zones}
          />
        )}
      </div>
      {width > 0 && (
        <ForeEdgeDetail lanes={lanes} ghost={ghost} room={width} stripScale={width / outside} zones={zones} />
      )}
      {ghostDesign && <GhostNote ghost={ghostDesign} />}
      {segment === undefined ? (
        <p className="help">Press a part of the strip to change it here.</p>
      ) : (
        <Tuner segment={segment} />
      )}
    </section>
  );
}
