import { useMemo, useState } from 'react';
import { clearanceOf, coverSupplies, extent, hideOf, type LeatherName } from '../../../core/index.ts';
import { FigureField } from '../../fields/FigureField.tsx';
import type { Bench } from '../../state/bench.ts';
import { lagging } from '../../state/lagging.tsx';
import { Panel } from '../PanelParts.tsx';
import { HideDrawing } from './HideDrawing.tsx';
import { LaidLeather } from './LaidLeather.tsx';
import { LEATHER_TITLES } from './leatherTitles.ts';
import { OwnedLeather } from './OwnedLeather.tsx';
import { usualPiece } from './usualPiece.ts';
import './leather.css';

/** The pieces laid out on the leather owned, or on a usual piece until one is entered. */
function LeatherPanel({ design, lengths }: Pick<Bench, 'design' | 'lengths'>) {
  const { hides } = design.job;
  const [drawn, setDrawn] = useState<LeatherName | null>(null);
  const { outlines, areas } = useMemo(() => coverSupplies(design), [design]);
  return (
    <Panel
      name="Leather owned"
      fields={
        <>
          {areas.map(({ leather }) => (
            <OwnedLeather key={leather} leather={leather} />
          ))}
          <section aria-labelledby="laying-out">
            <h3 id="laying-out">Laying out</h3>
            <FigureField path="hides.spacing_mm" empty="default" />
            <FigureField path="hides.edge_mm" empty="default" />
          </section>
        </>
      }
    >
      <div className="laid-leathers">
        {areas.map(({ leather, net, gross }) => {
          const pieces = outlines.filter((outline) => outline.leather === leather);
          const longest = Math.max(...pieces.flatMap(({ polygon }) => [extent(polygon, 0), extent(polygon, 1)]));
          const owned = hides[leather];
          const usual = usualPiece(gross, longest, hides);
          const hide = owned === null ? usual.hide : hideOf(owned);
          const question = { outlines: pieces, hide, clearance: clearanceOf(hides) };
          return (
            <div key={leather} data-drawn={drawn === leather || undefined}>
              {drawn === leather && <HideDrawing leather={leather} />}
              <LaidLeather leather={leather} question={question} isOwned={owned !== null} />
              {owned === null && (
                <p className="help">
                  Assumed: a piece of {lengths.size(usual.side)} × {lengths.size(usual.side)}. Enter the leather you own
                  and the pieces are laid out on it. {lengths.area(net)} in the pieces; {lengths.area(gross)} with waste
                  is what to look for.
                </p>
              )}
              <button
                type="button"
                className="not-printed"
                aria-expanded={drawn === leather}
                onClick={() => setDrawn(drawn === leather ? null : leather)}
              >
                Draw by hand<span className="only-heard"> the {LEATHER_TITLES[leather].toLowerCase()}</span>
              </button>
            </div>
          );
        })}
      </div>
    </Panel>
  );
}

export default lagging(({ design, lengths }) => ({ design, lengths }), LeatherPanel);
