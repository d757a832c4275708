import { useMemo, useState } from 'react';
import type { LeatherName } from '../../../core/index.ts';
import { leathersToLay } from '../../../output/layout/layoutQuestions.ts';
import { FigureField } from '../../fields/FigureField.tsx';
import type { Bench } from '../../state/bench.ts';
import { lagging } from '../../state/lagging.tsx';
import { Panel } from '../PanelParts.tsx';
import { HideDrawing } from './HideDrawing.tsx';
import { LaidLeather } from './LaidLeather.tsx';
import { LEATHER_TITLES } from './leatherTitles.ts';
import { OwnedLeather } from './OwnedLeather.tsx';
import './leather.css';

/** The pieces laid out on the leather owned, or on a usual piece until one is entered. */
function LeatherPanel({ design, lengths }: Pick<Bench, 'design' | 'lengths'>) {
  const [drawn, setDrawn] = useState<LeatherName | null>(null);
  const toLay = useMemo(() => leathersToLay(design), [design]);
  return (
    <Panel
      name="Leather owned"
      fields={
        <>
          {toLay.map(({ leather }) => (
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
        {toLay.map(({ leather, question, isOwned, usualSide, net, gross }) => (
          <div key={leather} data-drawn={drawn === leather || undefined}>
            {drawn === leather && <HideDrawing leather={leather} />}
            <LaidLeather leather={leather} question={question} isOwned={isOwned} />
            {!isOwned && (
              <p className="help">
                Assumed: a piece of {lengths.size(usualSide)} × {lengths.size(usualSide)}. Enter the leather you own and
                the pieces are laid out on it. {lengths.area(net)} in the pieces; {lengths.area(gross)} with waste is
                what to look for.
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
        ))}
      </div>
    </Panel>
  );
}

export default lagging(({ design, lengths }) => ({ design, lengths }), LeatherPanel);
