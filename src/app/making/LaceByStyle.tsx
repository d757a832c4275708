import { type CoverSupplies, type LaceStyle, laceNeed, laceOffReel } from '../../core/index.ts';
import { FigureField } from '../fields/FigureField.tsx';
import { useBench } from '../state/BenchContext.tsx';

/** Every style of lacing on this seam: computed lace beside the trade's rule of thumb. */
export function LaceByStyle({ supplies: { seams } }: { readonly supplies: CoverSupplies }) {
  const { design, lengths } = useBench(({ design, lengths }) => ({ design, lengths }));
  const { job } = design;
  const styles = Object.keys(job.supplies.laceMultiples) as LaceStyle[];
  return (
    <>
      <table>
        <caption>Lace over seam, by style</caption>
        <thead>
          <tr>
            <th scope="col">Style</th>
            <th scope="col">as it runs</th>
            <th scope="col">the trade's</th>
            <th scope="col">in all</th>
          </tr>
        </thead>
        <tbody>
          {styles.map((style) => {
            const need = laceNeed(seams, style, job);
            return (
              <tr key={style} aria-current={style === job.seam.style ? 'true' : undefined}>
                <th scope="row">
                  {style}
                  {style === job.seam.style && ', chosen'}
                </th>
                <td>{need === null ? 'none' : `${lengths.number(need.multiple, 1)} ×`}</td>
                <td>
                  {job.supplies.laceMultiples[style].low} to {job.supplies.laceMultiples[style].high} ×
                </td>
                <td>{need === null ? 'none' : lengths.reel(laceOffReel(need, lengths.units).total)}</td>
              </tr>
            );
          })}
        </tbody>
      </table>
      <details>
        <summary>The trade's multiples of the seam</summary>
        <form className="multiples" aria-label="The trade's multiples" onSubmit={(event) => event.preventDefault()}>
          {styles.flatMap((style) =>
            (['low', 'high'] as const).map((end) => (
              <FigureField key={`${style} ${end}`} path={`supplies.laceMultiples.${style}.${end}`} empty="default" />
            )),
          )}
        </form>
      </details>
    </>
  );
}
