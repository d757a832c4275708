import { useMemo } from 'react';
import { clearanceOf, coverSupplies, hideOf } from '../../../core/index.ts';
import { FigureField } from '../../fields/FigureField.tsx';
import type { Bench } from '../../state/bench.ts';
import { lagging } from '../../state/lagging.tsx';
import { Panel } from '../PanelParts.tsx';
import { LaidLeather } from './LaidLeather.tsx';
import { LEATHER_TITLES } from './leatherTitles.ts';
import { OwnedLeather } from './OwnedLeather.tsx';

/** The leather owned, and the pieces laid out on it. */
function LeatherPanel({ design, lengths }: Pick<Bench, 'design' | 'lengths'>) {
  const { hides } = design.job;
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
      {areas.map(({ leather, net, gross }) => {
        const owned = hides[leather];
        const title = LEATHER_TITLES[leather];
        if (owned === null)
          return (
            <section key={leather} className="laid" aria-label={title}>
              <h3>{title}</h3>
              <p>
                {lengths.area(net)} in the pieces; {lengths.area(gross)} with waste is what to look for. Enter the
                leather you own and the pieces are laid out on it.
              </p>
            </section>
          );
        const pieces = outlines.filter((outline) => outline.leather === leather);
        const question = { outlines: pieces, hide: hideOf(owned), clearance: clearanceOf(hides) };
        return <LaidLeather key={leather} title={title} question={question} />;
      })}
    </Panel>
  );
}

export default lagging(({ design, lengths }) => ({ design, lengths }), LeatherPanel);
