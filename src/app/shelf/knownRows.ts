import { GIVE_OR_TAKE, type Hand, type Known, type LeatherKnowledge, type Printer, signed } from '../../core/index.ts';

/** One figure of a leather or of the maker's hand as it is known, in words. */
export interface KnownRow {
  readonly name: string;
  readonly value: string;
  readonly giveOrTake: string;
  readonly from: string;
}

/** Where a figure is known from. */
const FROM: Readonly<Record<Known['from'], string>> = {
  usual: 'usual',
  shop: 'your other leathers',
  tests: 'its tests',
  covers: 'covers made',
};

type Print = (value: number) => string;

const plain =
  (decimals: number): Print =>
  (value) =>
    signed(value.toFixed(decimals));

function row(name: string, known: Known, print: Print): KnownRow {
  const { value, u, from } = known;
  return { name, value: print(value), giveOrTake: print(GIVE_OR_TAKE * u), from: FROM[from] };
}

/** What the fit hangs on, along and across the hide's backbone apart. */
export function fitRows({ bendRatio, neutral, change }: LeatherKnowledge, lengths: Printer): readonly KnownRow[] {
  const share: Print = (value) => lengths.share(value, 2);
  return [
    row('Bend ratio across', bendRatio.across, plain(2)),
    row('Bend ratio along', bendRatio.along, plain(2)),
    row('K factor across', neutral.across, plain(2)),
    row('K factor along', neutral.along, plain(2)),
    row('Change of size across', change.across, share),
    row('Change of size along', change.along, share),
  ];
}

/** What the strip hangs on, and the weight. */
export function restRows(knowledge: LeatherKnowledge, lengths: Printer): readonly KnownRow[] {
  const { modulus_MPa: modulus, creaseSet, density_kg_m3: density, thickness } = knowledge;
  const stiffness: Print = (value) => `${plain(0)(value)} MPa`;
  return [
    ...(thickness === null ? [] : [row('Thickness', thickness, (value) => lengths.small(value))]),
    row('Stiffness across', modulus.across, stiffness),
    row('Stiffness along', modulus.along, stiffness),
    row('How well creases stay', creaseSet, (value) => lengths.share(value)),
    row('Density', density, (value) => `${plain(0)(value)} kg/m³`),
  ];
}

/** The maker's own way, beyond what is drawn. */
export function handRows({ margin_mm: margin, cutting_mm: cutting }: Hand, lengths: Printer): readonly KnownRow[] {
  const small: Print = (value) => lengths.small(value);
  return [row('Your hand: left more at an edge', margin, small), row('Your hand: cut larger', cutting, small)];
}
