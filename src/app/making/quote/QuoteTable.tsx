import { type Printer, printer, type Quote, type QuoteLine } from '../../../core/index.ts';
import { useLengths } from '../../state/BenchContext.tsx';

const GROUPS = { materials: 'Materials', work: 'Work', further: 'Further lines' } as const;

/** A quantity as printed elsewhere; in an inch job what is priced by the metre also has its metres. */
function quantityText({ unit, quantity }: QuoteLine, { area, reel, volume, number }: Printer): string {
  if (unit === 'dm2') return area(quantity * 1e4);
  if (unit === 'ml') return volume(quantity);
  if (unit === 'h') return `${number(quantity, 2)} h`;
  if (unit === 'piece') return number(quantity, 0);
  if (unit === '') return '';
  const [own, metres] = [reel(quantity * 1e3), printer('mm').reel(quantity * 1e3)];
  return own === metres ? own : `${own} (${metres})`;
}

/** A quote, itemised; what has no rate has no amount and is named under it. */
export function QuoteTable({ quote }: { readonly quote: Quote }) {
  const lengths = useLengths();
  const { lines, net, markup, total, hours, unpriced } = quote;
  const money = (amount: number): string => lengths.money(amount, quote);
  const groups = (Object.keys(GROUPS) as (keyof typeof GROUPS)[]).filter((group) =>
    lines.some((line) => line.group === group),
  );
  const isPriced = unpriced.length < lines.length;
  return (
    <>
      {!isPriced && <p>No price is given yet: the lines stand with their quantities alone.</p>}
      <table className="quote">
        <thead>
          <tr>
            <th scope="col">Line</th>
            <th scope="col">quantity</th>
            <th scope="col">rate</th>
            <th scope="col">amount</th>
          </tr>
        </thead>
        {groups.map((group) => (
          <tbody key={group}>
            <tr>
              <th scope="rowgroup" colSpan={4}>
                {GROUPS[group]}
              </th>
            </tr>
            {lines.flatMap((line, i) =>
              line.group !== group
                ? []
                : [
                    // biome-ignore lint/suspicious/noArrayIndexKey: two lines may bear the same name
                    <tr key={i}>
                      <th scope="row">{line.name}</th>
                      <td>{quantityText(line, lengths)}</td>
                      <td>{line.unit !== '' && line.rate !== null && line.rate}</td>
                      <td>{line.amount === null ? 'no price' : money(line.amount)}</td>
                    </tr>,
                  ],
            )}
          </tbody>
        ))}
        <tfoot>
          {markup !== 0 && (
            <>
              <Sum name="Sum of the lines" amount={money(net)} />
              <Sum name="Markup" amount={money(markup)} />
            </>
          )}
          <Sum name={unpriced.length > 0 ? 'Total of what is priced' : 'Total'} amount={money(total)} />
        </tfoot>
      </table>
      <p>Working time: {lengths.number(hours, 1)} hours.</p>
      {isPriced && unpriced.length > 0 && (
        <p className="caution">Without a price, and so not in the total: {unpricedWords(lines)}.</p>
      )}
    </>
  );
}

/** The lines without a rate, materials by name; work has one rate for all of it. */
function unpricedWords(lines: readonly QuoteLine[]): string {
  const bare = lines.filter(({ rate }) => rate === null);
  const materials = bare.filter(({ group }) => group === 'materials').map(({ name }) => name.toLowerCase());
  return [...materials, ...(bare.some(({ group }) => group === 'work') ? ['all work'] : [])].join(', ');
}

function Sum({ name, amount }: { readonly name: string; readonly amount: string }) {
  return (
    <tr>
      <th scope="row" colSpan={3}>
        {name}
      </th>
      <td>{amount}</td>
    </tr>
  );
}
