import { agreement, type Compared, comparedCover, grouped } from '../../../core/index.ts';
import { comparisonPicture } from '../../../output/comparison/comparisonPicture.ts';
import { useOpenLeathers } from '../../shelf/useOpenLeathers.ts';
import { useLengths } from '../../state/BenchContext.tsx';
import { ComparisonDrawing } from './ComparisonDrawing.tsx';

/** How good the tool has been: what the maker's own covers came out like, beside what was foretold of them. */
export default function OwnCovers() {
  const lengths = useLengths();
  const { leathers: shelved } = useOpenLeathers(undefined);
  if (shelved === null) return null;
  const leathers = shelved.map(({ leather }) => leather).filter(({ covers }) => covers.length > 0);
  const all = leathers.flatMap(({ name, covers }) => covers.flatMap((cover) => comparedCover(cover, name)));
  if (all.length === 0) return null;
  return (
    <section className="own-covers-part" aria-labelledby="own-covers">
      <h3 id="own-covers">How good has it been</h3>
      <div className="own-covers">
        <table className="known-table">
          <caption>Gaps of your covers, less what was foretold</caption>
          <thead>
            <tr>
              <th scope="col">Where</th>
              <th scope="col">covers</th>
              <th scope="col">on average</th>
              <th scope="col">typically off by</th>
              <th scope="col">within give or take</th>
            </tr>
          </thead>
          <tbody>
            {[...grouped(all, 'of'), ...(leathers.length > 1 ? grouped(all, 'leather') : [])].map(([name, some]) => (
              <AgreementRow key={name} name={name} some={some} />
            ))}
          </tbody>
        </table>
        <ComparisonDrawing picture={comparisonPicture(all, lengths.units)} />
      </div>
      <p className="help">
        Of 100 covers about 95 should lie within give or take. Far fewer: something is off that is not reckoned with.
        All of them, over many covers: the covers are surer than is said.
      </p>
    </section>
  );
}

function AgreementRow({ name, some }: { readonly name: string; readonly some: readonly Compared[] }) {
  const lengths = useLengths();
  const { count, bias, rms, within } = agreement(some);
  return (
    <tr>
      <th scope="row">{name}</th>
      <td>{count}</td>
      <td>
        {lengths.small(Math.abs(bias))} {bias < 0 ? 'tighter' : 'looser'}
      </td>
      <td>{lengths.small(rms)}</td>
      <td>
        {within} of {count}
      </td>
    </tr>
  );
}
