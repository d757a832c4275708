import type { Patch } from '../../core/job/jobDocument.ts';
import { CARD, TEMPERS, type Temper as TemperWord, temperOf } from '../../core/leather/temper.ts';
import type { Printer } from '../../core/units/printer.ts';
import { useBench } from '../state/BenchContext.tsx';
import { Choice } from './Choice.tsx';

interface TemperProps {
  readonly piece: 'outside' | 'pocket' | 'lining';
  readonly title: string;
}

const OWN = 'own figures';

/** The temper of a leather in one word, tied to how it folds; card stands beside the leathers. */
export function Temper({ piece, title }: TemperProps) {
  const { history, dispatch, lengths } = useBench();
  const leather = history.good.job.leather[piece];
  if (leather === null) return null;
  const temper = temperOf(leather);
  const words = [...TEMPERS, CARD].map(({ name }) => ({ value: name, label: name }));
  const choose = (value: string): void => {
    const chosen = [...TEMPERS, CARD].find(({ name }) => name === value);
    if (chosen !== undefined) dispatch({ type: 'edit', patches: temperPatches(piece, chosen, temper) });
  };
  return (
    <Choice
      title={title}
      options={temper === null ? [...words, { value: OWN, label: OWN }] : words}
      chosen={temper?.name ?? OWN}
      choose={choose}
      notes={[
        temper === null
          ? 'Numbers of your own, below.'
          : `${numbers(temper, lengths)}. Assumed; no source gives the numbers of these words.`,
        ...(temper?.name === 'card' || piece !== 'outside'
          ? []
          : [`Card is taken as ${lengths.given(CARD.thickness_mm)} thick.`]),
      ]}
    />
  );
}

const numbers = ({ feel, bendRatio, neutral, modulus_MPa }: TemperWord, print: Printer): string =>
  `${feel.charAt(0).toUpperCase()}${feel.slice(1)}: bend ratio ${bendRatio}, neutral fraction ${print.number(neutral, 2)}, ${modulus_MPa} MPa`;

/**
 * The changes that a temper makes to one leather. Card brings its thickness and density too and is not skived; a leather
 * after card takes the usual density again.
 */
export function temperPatches(
  piece: TemperProps['piece'],
  temper: TemperWord,
  before: TemperWord | null,
): readonly Patch[] {
  const { bendRatio, neutral, modulus_MPa } = temper;
  const sheet =
    temper.name === CARD.name
      ? {
          min_mm: CARD.thickness_mm,
          max_mm: CARD.thickness_mm,
          foldThickness_mm: undefined,
          density_kg_m3: CARD.density_kg_m3,
        }
      : before?.name === CARD.name
        ? { density_kg_m3: undefined }
        : {};
  return Object.entries({ bendRatio, neutral, modulus_MPa, ...sheet }).map(([key, value]) => ({
    path: `leather.${piece}.${key}`,
    value,
  }));
}
