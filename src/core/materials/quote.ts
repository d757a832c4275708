import type { CoverDesign } from '../fold/coverDesign.ts';
import type { LeatherName } from '../job/jobSchema.ts';
import { MM2_PER_DM2 } from '../units/mm.ts';
import type { CoverSupplies } from './coverSupplies.ts';
import { workSteps } from './workSteps.ts';

/** One line of a quote. Without a rate it has no amount, and the total leaves it out. */
export interface QuoteLine {
  readonly name: string;
  readonly group: 'materials' | 'work' | 'further';
  readonly quantity: number;
  readonly unit: 'dm2' | 'm' | 'ml' | 'h' | 'piece' | '';
  readonly rate: number | null;
  readonly amount: number | null;
}

/** A price and a time, line by line. Amounts are rounded to the job's decimals first, so that what is printed adds up. */
export interface Quote {
  readonly currency: string;
  readonly decimals: number;
  readonly lines: readonly QuoteLine[];
  /** Sum of the amounts. */
  readonly net: number;
  readonly markup: number;
  /** net + markup */
  readonly total: number;
  /** Hours of all work. */
  readonly hours: number;
  /** Names of lines that have no rate. */
  readonly unpriced: readonly string[];
}

const LEATHER_NAMES: Readonly<Record<LeatherName, string>> = {
  outside: 'Outside leather',
  pocket: 'Pocket leather',
  lining: 'Lining leather',
};

/**
 * Prices a cover with the job's rates.
 *
 * Every amount is quantity x rate, rounded half up to the decimals of the currency; sums are taken in its smallest unit.
 * @param supplies of the same design
 */
export function quote({ job }: CoverDesign, supplies: CoverSupplies): Quote {
  const { rates } = job;
  const { prices } = rates;
  const unit = 10 ** rates.decimals;
  const inUnits = (value: number): number => Math.round(value * unit + Math.sign(value) * 1e-6);
  const line = (
    group: QuoteLine['group'],
    name: string,
    quantity: number,
    per: QuoteLine['unit'],
    rate: number | null,
  ): QuoteLine => ({
    name,
    group,
    quantity,
    unit: per,
    rate,
    amount: rate === null ? null : inUnits(quantity * rate) / unit,
  });
  const leatherRate: Record<LeatherName, number | null> = {
    outside: prices.outside_per_dm2,
    pocket: prices.pocket_per_dm2 ?? prices.outside_per_dm2,
    lining: prices.lining_per_dm2 ?? prices.outside_per_dm2,
  };
  const { thread, lace, strap, ribbon, fastening, edges, cement, areas } = supplies;
  const steps = workSteps(job, supplies);
  const lines = [
    ...areas.map(({ leather, gross }) =>
      line('materials', LEATHER_NAMES[leather], gross / MM2_PER_DM2, 'dm2', leatherRate[leather]),
    ),
    ...(thread === null ? [] : [line('materials', 'Thread', (thread.total + strap) / 1000, 'm', prices.thread_per_m)]),
    ...(lace === null ? [] : [line('materials', 'Lace', (lace.total + strap) / 1000, 'm', prices.lace_per_m)]),
    ...(cement === 0 ? [] : [line('materials', 'Contact cement', cement / MM2_PER_DM2, 'dm2', prices.cement_per_dm2)]),
    ...(ribbon === null
      ? []
      : [line('materials', 'Ribbon', (ribbon.count * ribbon.sum.total) / 1000, 'm', prices.ribbon_per_m)]),
    ...(fastening === null ? [] : [line('materials', fastening.name, 1, 'piece', prices.fastening_each)]),
    ...(edges.paint === 0 ? [] : [line('materials', 'Edge paint', edges.paint, 'ml', prices.paint_per_ml)]),
    ...steps.map(({ name, minutes }) => line('work', name, minutes / 60, 'h', prices.hour)),
    ...rates.extras.map(({ name, amount }) => line('further', name, 1, '', amount)),
  ];
  const net = lines.reduce((sum, { amount }) => sum + inUnits(amount ?? 0), 0);
  const markup = Math.round((net * rates.markup_percent) / 100);
  return {
    currency: rates.currency,
    decimals: rates.decimals,
    lines,
    net: net / unit,
    markup: markup / unit,
    total: (net + markup) / unit,
    hours: steps.reduce((sum, { minutes }) => sum + minutes, 0) / 60,
    unpriced: lines.filter(({ rate }) => rate === null).map(({ name }) => name),
  };
}
