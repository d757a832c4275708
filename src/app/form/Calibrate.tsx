import { useState } from 'react';
import {
  type Calibrated,
  calibrateBendRatio,
  calibrateNeutral,
  DOUBT_PATHS,
  fieldNote,
  GIVE_OR_TAKE,
  type JobPath,
  type LeatherName,
  type Patch,
  parseLength,
} from '../../core/index.ts';
import { Choice } from '../fields/Choice.tsx';
import { PlainField } from '../fields/PlainField.tsx';
import { useDispatch, useLengths } from '../state/BenchContext.tsx';

const BENDS = [
  { value: 'edge', label: 'over the edge of a block', angle: Math.PI / 2 },
  { value: 'rod', label: 'round a rod', angle: Math.PI },
];

/** What is measured in the two tests; every entry is a length. */
const ENTRIES = {
  thickness: { title: 'Thickness of the offcut', help: 'Of this very piece, where it is bent.' },
  radius: { title: 'Radius of the edge or rod', help: 'Half the rod; 0 for a sharp edge.' },
  length: {
    title: 'Length of the bend',
    help: 'Mark on its edge where the bend begins and ends. Lay it flat and measure from mark to mark.',
  },
  fold: {
    title: 'Thickness of a hard fold',
    help: 'The offcut folded on itself and pressed as at a seam, over both layers.',
  },
  error: { title: 'Each of these may be off by', help: 'Callipers are good to about 0.1 mm on leather.' },
} as const;

type Entry = keyof typeof ENTRIES;

/** Two tests on an offcut that give this leather's neutral fraction and bend ratio, with their errors. */
export function Calibrate({ piece }: { readonly piece: LeatherName }) {
  const lengths = useLengths();
  const [bend, setBend] = useState(BENDS[0]!);
  const [texts, setTexts] = useState<Readonly<Record<Entry, string>>>({
    thickness: '',
    radius: '',
    length: '',
    fold: '',
    error: '',
  });
  const read = (entry: Entry) => parseLength(texts[entry], { defaultUnit: lengths.units });
  const value = (entry: Entry): number | null => {
    const reading = read(entry);
    return reading.ok ? reading.value : null;
  };

  const thickness = value('thickness');
  const radius = value('radius');
  const length = value('length');
  const fold = value('fold');
  const error = value('error') ?? 0.1;
  const hasThickness = thickness !== null && thickness > 0;
  const neutral =
    hasThickness && radius !== null && length !== null
      ? calibrateNeutral({ length, angle: bend.angle, radius, thickness, error })
      : null;
  const bendRatio = hasThickness && fold !== null ? calibrateBendRatio(fold, thickness, error) : null;

  return (
    <details className="assumptions">
      <summary>Test an offcut of this leather</summary>
      <p className="help">
        Bend a piece as wide as a finger and fold it hard, cased if the cover will be cased. Leave out a test that was
        not made.
      </p>
      <Choice
        title="Bent"
        options={BENDS}
        chosen={bend.value}
        choose={(chosen) => setBend(BENDS.find((each) => each.value === chosen) ?? bend)}
      />
      {(Object.keys(ENTRIES) as Entry[]).map((entry) => {
        const reading = read(entry);
        return (
          <PlainField
            key={entry}
            title={ENTRIES[entry].title}
            help={ENTRIES[entry].help}
            text={texts[entry]}
            placeholder={entry === 'error' ? lengths.size(0.1) : ''}
            echo={reading.ok && reading.understood !== texts[entry].trim() ? reading.understood : null}
            issues={texts[entry] === '' || reading.ok ? [] : [reading.message]}
            change={(text) => setTexts({ ...texts, [entry]: text })}
          />
        );
      })}
      <Finding path={`leather.${piece}.neutral`} found={neutral} />
      <Finding path={`leather.${piece}.bendRatio`} found={bendRatio} />
    </details>
  );
}

/** What a test puts into the job: its value, and its doubt where the cover has one: from low to high is 19 in 20. */
function testPatches(path: JobPath, { value, low, high }: Calibrated): readonly Patch[] {
  const doubted = DOUBT_PATHS.find((each) => each === path);
  const rounded = (figure: number): number => Number(figure.toFixed(3));
  return [
    { path, value: rounded(value) },
    ...(doubted === undefined
      ? []
      : ([
          { path: `doubts.${doubted}.u`, value: rounded((high - low) / 2 / GIVE_OR_TAKE) },
          { path: `doubts.${doubted}.from`, value: 'measured' },
        ] as const)),
  ];
}

/** What a test found for one assumption, and the button that puts it in force. */
function Finding({ path, found }: { readonly path: JobPath; readonly found: Calibrated | null }) {
  const dispatch = useDispatch();
  if (found === null) return null;
  const { title, min, max } = fieldNote(path);
  const figure = (value: number): string => value.toFixed(3);
  const isAllowed = found.value >= min && found.value <= max;
  return (
    <p className="remedy" role="status">
      {title}: {figure(found.value)}, between {figure(found.low)} and {figure(found.high)}.{' '}
      {isAllowed ? (
        <button type="button" onClick={() => dispatch({ type: 'edit', patches: testPatches(path, found) })}>
          Use it<span className="only-heard"> as {title}</span>
        </button>
      ) : (
        `Leather lies between ${min} and ${max}: measure again, on a wider offcut.`
      )}
    </p>
  );
}
