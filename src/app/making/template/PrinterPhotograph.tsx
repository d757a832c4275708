import { useState } from 'react';
import { GIVE_OR_TAKE, MOST_PRINT_OFF, parseLength, printByLengths, type Vec2 } from '../../../core/index.ts';
import { BAR_LENGTH } from '../../../output/pdf/printerScale.ts';
import { Choice } from '../../fields/Choice.tsx';
import { PlainField } from '../../fields/PlainField.tsx';
import { OnePhotograph, type PointedPhotograph } from '../../photograph/OnePhotograph.tsx';
import { useLengths } from '../../state/BenchContext.tsx';

/** What lies on the printed page, and how large it is, mm. */
const THINGS = [
  { value: 'ruler', label: 'a ruler each way' },
  { value: 'card', label: 'a bank card' },
] as const;

/** Standard uncertainties, mm: of a card (ISO/IEC 7810, ID-1: 85.60 by 53.98 mm, within 0.13), of a ruler's strokes, of their thickness. */
const CARD = { across: 85.6, along: 53.98, u: 0.08, thick: 0.76 } as const;
const RULER = { u: 0.1, thick: 1 } as const;
const THICK_U = 0.3;
/** How sure a bar has to be to be worth correcting, mm. */
const WORTH = 2;

/** Points on the two lengths that are known, as shares of the picture. */
const POINTS = [
  { name: 'Left end', at: [0.35, 0.5] },
  { name: 'Right end', at: [0.65, 0.5] },
  { name: 'Lower end', at: [0.5, 0.65] },
  { name: 'Upper end', at: [0.5, 0.35] },
] as const;
const LINES = [
  [0, 1],
  [2, 3],
] as const;

interface PrinterPhotographProps {
  /** Takes what both check bars measure, mm. */
  readonly take: (bars: { readonly x_mm: number; readonly y_mm: number }) => void;
}

/** What the printer does to lengths, by a photograph of the sheet that it has printed with something of known size on it. */
export default function PrinterPhotograph({ take }: PrinterPhotographProps) {
  const lengths = useLengths();
  const [thing, setThing] = useState<'card' | 'ruler'>('ruler');
  const [typed, setTyped] = useState({ across: '', along: '' });
  const field = (way: 'across' | 'along', title: string) => {
    const read = parseLength(typed[way], { defaultUnit: lengths.units });
    return (
      <PlainField
        title={title}
        help="Between the two strokes on which the points lie."
        text={typed[way]}
        change={(text) => setTyped({ ...typed, [way]: text })}
        issues={typed[way] === '' || read.ok ? [] : [read.message]}
      />
    );
  };
  const ruler = (way: 'across' | 'along'): number | null => {
    const read = parseLength(typed[way], { defaultUnit: lengths.units });
    return read.ok ? read.value : null;
  };
  const known =
    thing === 'card' ? { across: CARD.across, along: CARD.along } : { across: ruler('across'), along: ruler('along') };
  return (
    <>
      <p className="help">
        Print page 1 of the sheet to photograph on this printer. Lay a ruler across it and another along it. A bank card
        does too, its long side across, but leaves more in doubt. Photograph the page from straight above, filling the
        picture.
      </p>
      <Choice
        title="On the page lies"
        options={THINGS}
        chosen={thing}
        choose={(value) => setThing(value as 'card' | 'ruler')}
      />
      {thing === 'ruler' && (
        <>
          {field('across', 'Length across')}
          {field('along', 'Length upright')}
        </>
      )}
      <OnePhotograph title="Photograph of the printed page" points={POINTS} lines={LINES}>
        {(pointed) =>
          known.across === null || known.along === null ? (
            <p className="help">Type both lengths to see what the printer does.</p>
          ) : (
            <PrinterFound
              pointed={pointed}
              known={{ across: known.across, along: known.along }}
              u={thing === 'card' ? CARD.u : RULER.u}
              thick={thing === 'card' ? CARD.thick : RULER.thick}
              take={take}
            />
          )
        }
      </OnePhotograph>
    </>
  );
}

interface PrinterFoundProps extends PrinterPhotographProps {
  readonly pointed: PointedPhotograph;
  readonly known: { readonly across: number; readonly along: number };
  readonly u: number;
  readonly thick: number;
}

function PrinterFound({ pointed: { photograph, points }, known, u, thick, take }: PrinterFoundProps) {
  const lengths = useLengths();
  const [left, right, lower, upper] = points as readonly [Vec2, Vec2, Vec2, Vec2];
  const print = printByLengths(
    photograph,
    [
      { from: left, to: right, length: { value: known.across, u } },
      { from: lower, to: upper, length: { value: known.along, u } },
    ],
    { value: thick, u: THICK_U },
  );
  if ('ok' in print)
    return (
      <p className="issue" role="alert">
        The points and the marks fit no camera. Put the points on the ends of what lies there.
      </p>
    );
  const bar = (factor: number): number => factor * BAR_LENGTH;
  const [x, y] = [bar(print.across.value), bar(print.along.value)];
  const off = (one: number): string => lengths.fine(GIVE_OR_TAKE * bar(one));
  const isFair = [print.across, print.along].every(
    ({ value, u: own }) => Math.abs(value - 1) < MOST_PRINT_OFF && GIVE_OR_TAKE * bar(own) < WORTH,
  );
  return (
    <div role="status">
      <p>
        A bar of {lengths.fine(BAR_LENGTH)} comes out {lengths.fine(x)} across, give or take {off(print.across.u)}.
        Upright it comes out {lengths.fine(y)}, give or take {off(print.along.u)}.
      </p>
      {isFair ? (
        <button type="button" onClick={() => take({ x_mm: x, y_mm: y })}>
          Put both into the check bars
        </button>
      ) : (
        <p className="issue">That is not sure enough. Put each point on the very end of what lies there.</p>
      )}
    </div>
  );
}
