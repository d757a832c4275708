import { useState } from 'react';
import { type Contradiction, knowLeather, MAKING_STATES, type Shop, type StockLeather } from '../../../core/index.ts';
import { Choice } from '../../fields/Choice.tsx';
import { optionsOf } from '../../fields/optionsOf.ts';
import { fitRows, handRows, type KnownRow, restRows } from '../../shelf/knownRows.ts';
import { useLengths } from '../../state/BenchContext.tsx';
import './knowledge.css';

interface KnownFiguresProps {
  /** One of the shop's leathers, or a new one. */
  readonly leather: StockLeather;
  readonly shop: Shop;
}

type Worked = (typeof MAKING_STATES)[number];

/** All that is known of a leather: each figure, how far it may be off, and where it is known from. */
export function KnownFigures({ leather, shop }: KnownFiguresProps) {
  const lengths = useLengths();
  const [worked, setWorked] = useState<Worked>('dry');
  const known = knowLeather(leather, shop, { worked });
  const wrong = shop.contradictions.filter((each) => each.leather === leather);
  return (
    <section className="leather-knowledge" aria-labelledby="known-figures">
      <h3 id="known-figures">What is known</h3>
      {wrong.map((each) => (
        <p key={`${each.of} ${each.cover?.job}`} className="refused">
          {wrongWords(each)}
        </p>
      ))}
      <Choice
        title="Worked"
        options={optionsOf(MAKING_STATES)}
        chosen={worked}
        choose={(value) => setWorked(MAKING_STATES.find((state) => state === value) ?? 'dry')}
      />
      <KnownTable caption="This leather" rows={[...fitRows(known, lengths), ...restRows(known, lengths)]} />
      <KnownTable caption="Your hand, the same for all leathers" rows={handRows(shop.hand, lengths)} />
      <p className="help">
        Give or take: 19 in 20 are no further off. Along and across: as the leather runs to the hide’s backbone. A
        figure known from your other leathers is that of their tannage.
      </p>
    </section>
  );
}

function KnownTable({ caption, rows }: { readonly caption: string; readonly rows: readonly KnownRow[] }) {
  return (
    <table className="known-table">
      <caption>{caption}</caption>
      <thead>
        <tr>
          <th scope="col">Figure</th>
          <th scope="col">is</th>
          <th scope="col">give or take</th>
          <th scope="col">known from</th>
        </tr>
      </thead>
      <tbody>
        {rows.map(({ name, value, giveOrTake, from }) => (
          <tr key={name}>
            <th scope="row">{name}</th>
            <td>{value}</td>
            <td>{giveOrTake}</td>
            <td>{from}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

/** That a test or a cover cannot be right beside all the others, and what to do. */
function wrongWords({ of, cover, deviation }: Contradiction): string {
  const far = `${Math.abs(deviation).toFixed(1)} times as far off as errors explain, so nothing is taken from it`;
  if (cover === null)
    return `The test of ${of.startsWith('neutral') ? 'K' : of.startsWith('bendRatio') ? 'the bend ratio' : 'the change of size'} ${of.split('.').at(-1)} is ${far}. Test again.`;
  return `${of === 'wrap' ? 'Front and back' : 'Head and tail'} of “${cover.name}” are ${far}. Read that cover again, or do not count it.`;
}
