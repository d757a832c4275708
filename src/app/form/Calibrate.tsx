import { useState } from 'react';
import {
  bendTest,
  DOUBT_PATHS,
  fieldNote,
  foldTest,
  GIVE_OR_TAKE,
  type JobPath,
  type LeatherName,
  mm,
  type Patch,
  parseLength,
  type TestFigure,
} from '../../core/index.ts';
import { Choice } from '../fields/Choice.tsx';
import { PlainField } from '../fields/PlainField.tsx';
import { useDispatch, useLengths } from '../state/BenchContext.tsx';

const BENDS = [
  { value: 'edge', label: 'over the edge of a block', angle_deg: 90 },
  { value: 'rod', label: 'round a rod', angle_deg: 180 },
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
  const value = (entry: Entry) => {
    const reading = read(entry);
    return reading.ok ? reading.value : null;
  };

  const thickness_mm = value('thickness');
  const radius_mm = value('radius');
  const length_mm = value('length');
  const fold_mm = value('fold');
  const error_mm = value('error') ?? mm(0.1);
  const hasThickness = thickness_mm !== null && thickness_mm > error_mm;
  const neutral =
    hasThickness && radius_mm !== null && length_mm !== null
      ? bendTest({
          ...{ thickness_mm, radius_mm, length_mm, error_mm },
          angle_deg: bend.angle_deg,
          callipers_mm: error_mm,
        })
      : null;
  const bendRatio = hasThickness && fold_mm !== null ? foldTest({ thickness_mm, fold_mm, error_mm }) : null;

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

const rounded = (figure: number): number => Number(figure.toFixed(3));

/** What a test puts into the job: its value, and its doubt where the cover has one. */
function testPatches(path: JobPath, { value, u }: TestFigure): readonly Patch[] {
  const doubted = DOUBT_PATHS.find((each) => each === path);
  return [
    { path, value: rounded(value) },
    ...(doubted === undefined
      ? []
      : ([
          { path: `doubts.${doubted}.u`, value: rounded(u) },
          { path: `doubts.${doubted}.from`, value: 'measured' },
        ] as const)),
  ];
}

/** What a test found for one assumption, and the button that puts it in force. */
function Finding({ path, found }: { readonly path: JobPath; readonly found: TestFigure | null }) {
  const dispatch = useDispatch();
  if (found === null) return null;
  const { title, min, max } = fieldNote(path);
  const figure = (value: number): string => value.toFixed(3);
  const isAllowed = found.value >= min && found.value <= max;
  return (
    <p className="remedy" role="status">
      {title}: {figure(found.value)}, give or take {figure(GIVE_OR_TAKE * found.u)}.{' '}
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
