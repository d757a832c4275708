import { degreesFromRadians, pocketChoices } from '../../core/index.ts';
import type { Bench } from '../state/bench.ts';
import { lagging } from '../state/lagging.tsx';

const KEPT_BY = {
  hold: 'The least hold asks for deeper pockets.',
  loading: 'Deeper pockets would not let the second board in.',
} as const;

/** What pockets of other depths would ask of the boards and hold of them, beside those of the open job. */
function Choices({ design, lengths }: Pick<Bench, 'design' | 'lengths'>) {
  const { choices, keptBy } = pocketChoices(design);
  const { foldBack } = design.needs.nominal.book;
  return (
    <>
      <table>
        <caption>Loading and hold by the board covered</caption>
        <thead>
          <tr>
            <th scope="col">Board covered</th>
            <th scope="col">Depth</th>
            <th scope="col">Bend back</th>
            <th scope="col">Hold</th>
          </tr>
        </thead>
        <tbody>
          {choices.map(({ share, depth, loadingAngle, loads, held, holds, isCurrent }) => (
            <tr key={share} aria-current={isCurrent ? 'true' : undefined}>
              <th scope="row">
                {lengths.share(share)}
                {isCurrent && ', as it is'}
              </th>
              <td>{lengths.size(depth)}</td>
              <td>
                {lengths.degrees(degreesFromRadians(loadingAngle))}
                {!loads && ', too far'}
              </td>
              <td>
                {lengths.gap(held)}
                {!holds && ', too little'}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      <p className="help">
        The boards bend back {lengths.degrees(degreesFromRadians(foldBack), 'down')} past flat;{' '}
        {lengths.size(design.job.pockets.hold_mm)} of each is to stay held. {keptBy !== null && KEPT_BY[keptBy]}
      </p>
    </>
  );
}

export const PocketTable = lagging(({ design, lengths }) => ({ design, lengths }), Choices);
