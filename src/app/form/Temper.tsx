import {
  CARD,
  type LeatherName,
  type Printer,
  TEMPERS,
  type Temper as TemperWord,
  temperOf,
  temperPatches,
} from '../../core/index.ts';
import { Choice } from '../fields/Choice.tsx';
import { useBench, useDispatch, useLengths } from '../state/BenchContext.tsx';

interface TemperProps {
  readonly piece: LeatherName;
  readonly title: string;
}

const OWN = 'own figures';

/** The temper of a leather in one word, which sets how it folds; card is among the choices. */
export function Temper({ piece, title }: TemperProps) {
  const dispatch = useDispatch();
  const lengths = useLengths();
  const leather = useBench(({ history }) => history.good.job.leather[piece]);
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
          : [`Card is taken as ${lengths.size(CARD.thickness_mm)} thick.`]),
      ]}
    />
  );
}

const numbers = ({ feel, bendRatio, neutral, modulus_MPa }: TemperWord, print: Printer): string =>
  `${feel.charAt(0).toUpperCase()}${feel.slice(1)}: bend ratio ${bendRatio}, K factor ${print.number(neutral, 2)}, ${modulus_MPa} MPa`;
