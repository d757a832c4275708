import { useMemo } from 'react';
import { coverSupplies, quote } from '../../../core/index.ts';
import type { Bench } from '../../state/bench.ts';
import { lagging } from '../../state/lagging.tsx';
import { Panel } from '../PanelParts.tsx';
import { QuoteTable } from './QuoteTable.tsx';
import { RateFields } from './RateFields.tsx';

/** Price and time of one cover, line by line, with the maker's own rates. */
function QuotePanel({ design }: Pick<Bench, 'design'>) {
  const priced = useMemo(() => quote(design, coverSupplies(design)), [design]);
  return (
    <Panel name="Quote" fields={<RateFields />}>
      <h3>One cover: {design.job.name}</h3>
      <QuoteTable quote={priced} />
    </Panel>
  );
}

export default lagging(({ design }) => ({ design }), QuotePanel);
