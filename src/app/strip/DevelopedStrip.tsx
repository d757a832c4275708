import { useState } from 'react';
import { useBench } from '../state/BenchContext.tsx';
import { ForeEdgeDetail } from './ForeEdgeDetail.tsx';
import { rulerTicks } from './rulerTicks.ts';
import { StripDrawing } from './StripDrawing.tsx';
import { stripSegments } from './segments.ts';
import { gapText, stripLabels } from './stripLabels.ts';
import { Tuner } from './Tuner.tsx';
import { useWidth } from './useWidth.ts';

interface DevelopedStripProps {
  readonly highlight: string | null;
  readonly onHighlight: (zone: string | null) => void;
}

/** The whole wrap as one ruler, at the thick and the thin end of the leather, each stretch named, measured and tunable. */
export default function DevelopedStrip({ highlight, onHighlight }: DevelopedStripProps) {
  const { design, lengths } = useBench();
  const [ref, width] = useWidth<HTMLDivElement>();
  const [chosen, setChosen] = useState<string | null>(null);
  const thick = stripSegments(design, 'thick');
  const thin = stripSegments(design, 'thin');
  const thickness = (point: 'thick' | 'thin'): number => design.needs[point].leathers.outside.thickness;
  const isOneWeight = thickness('thick') === thickness('thin');
  const rows = [
    {
      title: isOneWeight ? lengths.fine(thickness('thick')) : `thick end ${lengths.fine(thickness('thick'))}`,
      segments: thick,
    },
    ...(isOneWeight ? [] : [{ title: `thin end ${lengths.fine(thickness('thin'))}`, segments: thin }]),
  ];
  const labels = stripLabels(thick, isOneWeight ? null : thin, lengths);
  const segment = thick.find(({ id }) => id === chosen);

  return (
    <section className="strip" aria-labelledby="strip-title">
      <header>
        <h2 id="strip-title">The wrap laid out</h2>
        <p>outside {lengths.cut(design.pieces.outside.width)}, cut edge to cut edge, book closed</p>
      </header>
      <div ref={ref} className="strip-frame">
        {width > 0 && (
          <StripDrawing
            rows={rows}
            labels={labels}
            ticks={rulerTicks(design.pieces.outside.width, lengths.unit)}
            room={width}
            span={design.pieces.outside.width}
            highlight={highlight}
            chosen={chosen}
            onHighlight={(id) => onHighlight(id ?? chosen)}
            onChoose={(id) => {
              setChosen(id === chosen ? null : id);
              onHighlight(id === chosen ? null : id);
            }}
          />
        )}
      </div>
      {width > 0 && (
        <ForeEdgeDetail
          rows={rows}
          room={width}
          stripScale={width / design.pieces.outside.width}
          say={(gap) => `${gap.length < 0 ? 'overrun' : 'gap'} ${gapText(gap.length, lengths)}`}
        />
      )}
      {segment === undefined ? <p className="help">Choose a stretch to tune it here.</p> : <Tuner segment={segment} />}
    </section>
  );
}
