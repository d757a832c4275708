import {
  CARD,
  capital,
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
  /** What the piece is called, with a capital. */
  readonly name: string;
}

const OWN = 'own figures';

const MATERIALS = ['leather', CARD.name].map((name) => ({ value: name, label: name }));

/** The temper that a leather starts with: the usual figures of the model. */
const USUAL = TEMPERS.find(({ name }) => name === 'medium')!;

/** What a piece is made in, and the temper of a leather in one word, which sets how it folds. */
export function Temper({ piece, name }: TemperProps) {
  const dispatch = useDispatch();
  const lengths = useLengths();
  const leather = useBench(({ history }) => history.good.job.leather[piece]);
  if (leather === null) return null;
  const temper = temperOf(leather);
  const isCard = temper?.name === CARD.name;
  const take = (chosen: TemperWord | undefined): void => {
    if (chosen !== undefined) dispatch({ type: 'edit', patches: temperPatches(piece, chosen, temper) });
  };
  const words = TEMPERS.map(({ name }) => ({ value: name, label: name }));
  return (
    <>
      <Choice
        title={`${name} made in`}
        options={MATERIALS}
        chosen={isCard ? CARD.name : 'leather'}
        choose={(value) => take(value === CARD.name ? CARD : USUAL)}
        notes={isCard ? [`${numbers(CARD, lengths)}. Taken as ${lengths.size(CARD.thickness_mm)} thick. Assumed.`] : []}
      />
      {!isCard && (
        <Choice
          title={`${name} temper`}
          options={temper === null ? [...words, { value: OWN, label: OWN }] : words}
          chosen={temper?.name ?? OWN}
          choose={(value) => take(TEMPERS.find(({ name }) => name === value))}
          notes={[
            temper === null
              ? 'Numbers of your own, below.'
              : `${numbers(temper, lengths)}. Assumed; no source gives the numbers of these words.`,
          ]}
        />
      )}
    </>
  );
}

const numbers = ({ feel, bendRatio, neutral, modulus_MPa }: TemperWord, print: Printer): string =>
  `${capital(feel)}: bend ratio ${bendRatio}, K factor ${print.number(neutral, 2)}, ${modulus_MPa} MPa`;
