import { holeNoun } from '../../core/index.ts';
import { strokeWords } from '../../output/ironWords.ts';
import { PatternSheet } from '../sheet/PatternSheet.tsx';
import { useTooledPattern } from '../sheet/useTooledPattern.ts';
import type { Bench } from '../state/bench.ts';
import { lagging } from '../state/lagging.tsx';
import { ConstructionFields } from './ConstructionFields.tsx';
import { FittingFields } from './FittingFields.tsx';
import { IronFields } from './irons/IronFields.tsx';
import { Notes, Panel } from './PanelParts.tsx';

/** How the pieces are made beyond their size, and the pattern that comes of it. */
function ConstructionPanel({ design, lengths }: Pick<Bench, 'design' | 'lengths'>) {
  const drawing = useTooledPattern(design);
  return (
    <Panel
      name="Construction"
      fields={
        <>
          <ConstructionFields />
          <IronFields />
          <FittingFields />
        </>
      }
    >
      <h3>The pattern, grain side up</h3>
      <p className="help">
        {drawing.holes} {holeNoun(design.job)} through the cover, at the same places in every layer. Long dashes: folds.
        Dots: seam. Short dashes: the boards. Chain line: middle of the spine.
        {drawing.pieces.some(({ layers }) => layers.tooling.length > 0) &&
          ' Sparse dots: the clear parts with their centre lines, and in them what is tooled.'}
      </p>
      <PatternSheet highest={640} drawing={drawing} />
      {strokeWords(design).map((words) => (
        <p key={words}>{words}</p>
      ))}
      {drawing.lengths.map(({ name, count, sum }) => (
        <p key={name}>
          {name}, cut {count}: {lengths.size(sum.total)} long.
        </p>
      ))}
      <Notes notes={drawing.notes} />
    </Panel>
  );
}

export default lagging(({ design, lengths }) => ({ design, lengths }), ConstructionPanel);
