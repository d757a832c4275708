import { useMemo } from 'react';
import { coverSupplies, FACE_TITLES, quote } from '../../../core/index.ts';
import { amountWords } from '../../../output/benchSheet/toolingSection.ts';
import type { Bench } from '../../state/bench.ts';
import { lagging } from '../../state/lagging.tsx';
import { Panel } from '../PanelParts.tsx';
import { QuoteTable } from './QuoteTable.tsx';
import { RateFields } from './RateFields.tsx';

/** Price and time of one cover, line by line, with the maker's own rates. */
function QuotePanel({ design, lengths }: Pick<Bench, 'design' | 'lengths'>) {
  const { supplies, priced } = useMemo(() => {
    const supplies = coverSupplies(design);
    return { supplies, priced: quote(design, supplies) };
  }, [design]);
  const { tooling } = supplies;
  return (
    <Panel name="Quote" fields={<RateFields />}>
      <h3>One cover: {design.job.name}</h3>
      <QuoteTable quote={priced} />
      {tooling.line > 0 && (
        <p>
          {amountWords(tooling, lengths)}, on{' '}
          {tooling.faces
            .map(({ face, clear }) => `${FACE_TITLES[face].toLowerCase()} (${lengths.area(clear)} clear)`)
            .join(', ')}
          .
        </p>
      )}
    </Panel>
  );
}

export default lagging(({ design, lengths }) => ({ design, lengths }), QuotePanel);
