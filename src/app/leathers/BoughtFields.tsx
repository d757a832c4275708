import { type ReactNode, useId } from 'react';
import {
  colourWords,
  DUST,
  DYE,
  MM2_PER_DM2,
  parseArea,
  parseColour,
  parseLeatherWeight,
  type Reading,
  readFigure,
  refusal,
  type StockLeather,
  TANNAGES,
} from '../../core/index.ts';
import { LASER_CAUTION } from '../../output/laserCaution.ts';
import { Choice } from '../fields/Choice.tsx';
import { optionsOf } from '../fields/optionsOf.ts';
import { PlainField } from '../fields/PlainField.tsx';
import type { PadKeys } from '../fields/pad.ts';
import { useDraft } from '../fields/useDraft.ts';
import { useLengths } from '../state/BenchContext.tsx';
import type { ChangeLeather } from './useLeather.ts';
import '../fields/colourField.css';

interface BoughtFieldsProps {
  readonly leather: StockLeather;
  readonly change: ChangeLeather;
}

const TANNAGE_WORDS = optionsOf(TANNAGES);
const TEMPER_WORDS = optionsOf(['soft', 'medium', 'firm'] as const);
const SURFACE_WORDS = optionsOf(['matt', 'satin', 'glossy'] as const);

const MOST_AREA = 2000;
const THICKNESS = { min: 0.2, max: 8 };
/** Tannages with chromium in them, or that may have it. */
const HOLDS_CHROME = new Set<StockLeather['tannage']>(['chrome', 'combination', 'not known']);

const PRICE = { title: 'Price', unit: '', min: 0, max: 1e6 } as const;
const WEIGHT_KEYS: PadKeys = ['-', ' oz', ' mm', '1/2'];
const AREA_KEYS: PadKeys = [' dm²', ' sq ft'];

/** A leather as it was bought, and what is left of it. */
export function BoughtFields({ leather, change }: BoughtFieldsProps) {
  const lengths = useLengths();
  const put = <Field extends keyof StockLeather>(field: Field, value: StockLeather[Field]): void =>
    change({ ...leather, [field]: value }, field);
  const { min_mm, max_mm, left_dm2: left, price_per_dm2: price } = leather;
  return (
    <section aria-label="As it was bought">
      <h3>As it was bought</h3>
      <div className="field-group wide-entries">
        <PlainField
          title="Name"
          text={leather.name}
          change={(text) => put('name', text.slice(0, 120))}
          help="As you know it: maker, part of the hide, lot."
        />
        <Entry
          title="Weight"
          value={{ min: min_mm, max: max_mm }}
          print={({ min, max }) => lengths.weights(min, max)}
          read={readWeight}
          commit={({ min, max }) => change({ ...leather, min_mm: min, max_mm: max }, 'weight')}
          keys={WEIGHT_KEYS}
          help="As it is sold: 4-5 oz, 4.5 oz or 1.6-2.0 mm."
        />
        <Entry
          title="Left"
          value={left}
          print={(area) => (area === null ? '' : lengths.area(area * MM2_PER_DM2))}
          read={orNone((text) => parseArea(text.replace(/\(.*$/, ''), lengths.units, MOST_AREA))}
          commit={(value) => put('left_dm2', value)}
          keys={AREA_KEYS}
          placeholder="not entered"
          help="What is left of it now, as 62 dm² or 6 3/4 sq ft."
        />
        <Entry
          title="Price of 1 dm²"
          value={price}
          print={(value) => (value === null ? '' : String(value))}
          read={orNone((text) => readFigure(PRICE, text, lengths.units))}
          commit={(value) => put('price_per_dm2', value)}
          keys={[]}
          placeholder="not entered"
          help="1 dm² is 0.1076 sq ft: for a price of a square foot, divide by 9.29."
        />
      </div>
      <div className="field-group">
        <Choice
          title="Tannage"
          options={TANNAGE_WORDS}
          chosen={leather.tannage}
          choose={(value) => put('tannage', value as StockLeather['tannage'])}
          notes={['Leathers of one tannage teach each other.']}
        />
        <Choice
          title="Temper"
          options={TEMPER_WORDS}
          chosen={leather.temper}
          choose={(value) => put('temper', value as StockLeather['temper'])}
          notes={['How it bends, until a strip of it is tested.']}
        />
      </div>
      <div className="field-group wide-entries">
        <ColourEntry colour={leather.colour} change={(colour) => put('colour', colour)} />
        <Choice
          title="Surface"
          options={SURFACE_WORDS}
          chosen={leather.surface}
          choose={(value) => put('surface', value as StockLeather['surface'])}
        />
        <PlainField
          title="Finish as bought"
          text={leather.finish}
          change={(text) => put('finish', text.slice(0, 120))}
          help="What the tannery put on it, as waxed, oiled or plain."
        />
      </div>
      <div className="field-group">
        <PlainField title="Notes" rows={4} text={leather.notes} change={(text) => put('notes', text.slice(0, 4000))} />
      </div>
      <p className="help">
        {DUST} {DYE} {HOLDS_CHROME.has(leather.tannage) && LASER_CAUTION[1]}
      </p>
    </section>
  );
}

interface EntryProps<T> {
  readonly title: ReactNode;
  readonly value: T;
  readonly print: (value: T) => string;
  readonly read: (text: string) => Reading<T>;
  readonly commit: (value: T) => void;
  readonly keys?: PadKeys;
  readonly placeholder?: string;
  readonly help?: string;
}

/** A figure of the leather, kept as soon as its text can be read. */
function Entry<T>({ value, print, read, commit, ...shown }: EntryProps<T>) {
  const { text, issues, change } = useDraft('', value, print, read, commit);
  return <PlainField {...shown} text={text} change={change} issues={issues} />;
}

/** A colour from the browser's own picker, or typed. */
function ColourEntry({ colour, change }: { readonly colour: string; readonly change: (colour: string) => void }) {
  const id = useId();
  return (
    <div className="colour-field">
      <input
        id={id}
        type="color"
        aria-label="Colour of the grain side, from a palette"
        value={colour}
        onChange={({ target: { value } }) => change(value)}
      />
      <Entry
        title="Colour"
        value={colour}
        print={(value) => value}
        read={parseColour}
        commit={change}
        help={`Pictured ${colourWords(colour)}. Type a colour as #8f5b3a, or press the patch beside it.`}
      />
    </div>
  );
}

/** Reads an entry that may be left empty. */
const orNone =
  <T,>(read: (text: string) => Reading<T>) =>
  (text: string): Reading<T | null> =>
    text.trim() === '' ? { ok: true, value: null, understood: '' } : read(text);

function readWeight(
  text: string,
): Reading<{ readonly min: StockLeather['min_mm']; readonly max: StockLeather['max_mm'] }> {
  const reading = parseLeatherWeight(text);
  if (!reading.ok) return reading;
  const { min, max } = reading.value;
  return min < THICKNESS.min || max > THICKNESS.max
    ? refusal(text, 'the weight of a leather for covers', 'Check the unit: it is 0.2 to 8 mm thick.')
    : reading;
}
