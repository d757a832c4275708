import { useMemo } from 'react';
import { coverSupplies } from '../../core/index.ts';
import { supplySection } from '../../output/benchSheet/supplySection.ts';
import { FigureField } from '../fields/FigureField.tsx';
import type { Bench } from '../state/bench.ts';
import { lagging } from '../state/lagging.tsx';
import { Blocks } from './Blocks.tsx';
import { LaceByStyle } from './LaceByStyle.tsx';
import { Notes, Panel } from './PanelParts.tsx';

/** Materials of one cover: leather, thread or lace, cement, ribbon, fastening, what the cut edges take. */
function SuppliesPanel({ design, lengths }: Pick<Bench, 'design' | 'lengths'>) {
  const { job } = design;
  const { supplies: rules } = job;
  const supplies = useMemo(() => coverSupplies(design), [design]);
  const { thread, lace } = supplies;
  const isLaced = job.seam.method === 'lacing';
  return (
    <Panel
      name="Supplies"
      fields={
        <section aria-labelledby="supply-rules">
          <h3 id="supply-rules">How they are used up</h3>
          <p className="help">Assumptions from common practice. Change one where you know better.</p>
          <FigureField path="supplies.waste" empty="default" />
          {isLaced ? (
            <>
              <FigureField path="supplies.laceThickness_mm" empty="default" />
              <FigureField path="supplies.laceTail_mm" empty="default" />
              <FigureField path="supplies.laceWorking_mm" empty="default" />
              <FigureField path="supplies.spliceOverlap_mm" empty="default" />
            </>
          ) : (
            <>
              <FigureField path="supplies.threadTail_mm" empty="default" />
              <FigureField path="supplies.threadWorking_mm" empty="default" />
              <FigureField path="supplies.backStitches" empty="default" />
            </>
          )}
          <FigureField path="supplies.cementBand_mm" empty="default" />
          {job.finish.edge === 'painted' && <FigureField path="supplies.paintFilm_mm" empty="default" />}
        </section>
      }
    >
      <h3>What one cover takes</h3>
      <Notes notes={supplies.notes} />
      <Blocks blocks={supplySection(supplies, job, lengths)} />
      {thread !== null && (
        <p>
          Saddle stitch: {2 * thread.threads} needles, one at each end of every thread. By rule of thumb a thread is cut
          to so many times the seam; here the stitches alone take {lengths.number(thread.multiple, 2)} times, and with
          tails and back stitches it comes to {lengths.number(thread.total / thread.seam, 2)}.
        </p>
      )}
      {lace !== null && (
        <p>
          {lace.laces === 1
            ? 'One lace, no splice; one lacing needle.'
            : `${lace.laces} laces, ${lengths.count(lace.laces - 1, 'splice', 'splices')} of ${lengths.size(rules.spliceOverlap_mm)}; one lacing needle.`}
        </p>
      )}
      {isLaced && <LaceByStyle supplies={supplies} />}
    </Panel>
  );
}

export default lagging(({ design, lengths }) => ({ design, lengths }), SuppliesPanel);
