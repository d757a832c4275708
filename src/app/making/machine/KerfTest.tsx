import { useId, useState } from 'react';
import { parseLength } from '../../../core/index.ts';
import { fileName } from '../../../output/fileName.ts';
import { COUPON, COUPON_ROW, couponKerf, kerfCoupon, withKerf } from '../../../output/machine/kerfCoupon.ts';
import { bedFile, type MachineFormat } from '../../../output/machine/machineFile.ts';
import type { MachineProfile } from '../../../output/machine/machineProfile.ts';
import { PlainField } from '../../fields/PlainField.tsx';
import { saveFile } from '../../state/saveFile.ts';
import { FORMATS } from './formats.ts';

interface KerfTestProps {
  readonly profile: MachineProfile;
  readonly put: (profile: MachineProfile) => void;
}

const ENTRIES = [
  ['leather', 'Leather tried', 'In your own words, as in the table.'],
  ['thickness', 'Its thickness', 'Without a unit: mm.'],
  ['across', 'Row across the bed, read', `Ten strips pushed together; drawn as ${COUPON_ROW} mm.`],
  ['along', 'Row along the bed, read', `Ten strips pushed together; drawn as ${COUPON_ROW} mm.`],
  ['error', 'A reading may be off by', 'Callipers 0.1 mm, a ruler 0.5 mm. Common practice.'],
] as const;
type Entry = (typeof ENTRIES)[number][0];

/** A test piece to cut, and the kerf from what is read off it. */
export function KerfTest({ profile, put }: KerfTestProps) {
  const title = useId();
  const [typed, type] = useState<Record<Entry, string>>({
    leather: '',
    thickness: '',
    across: '',
    along: '',
    error: '0.1',
  });
  const [taken, take] = useState<string | null>(null);
  const reading = (entry: Entry) =>
    typed[entry].trim() === '' ? null : parseLength(typed[entry], { defaultUnit: 'mm' });
  const value = (entry: Entry): number | null => {
    const read = reading(entry);
    return read?.ok ? read.value : null;
  };
  const [coupon, whyNot] = tried(() => kerfCoupon(profile));
  const [across, along, error, thickness] = [value('across'), value('along'), value('error'), value('thickness')];
  const isRead = across !== null && along !== null && error !== null;
  const [found, refused] = isRead ? tried(() => couponKerf({ across, along, error })) : [null, null];
  const save = (format: MachineFormat, type: string): void => {
    const [bed] = coupon?.beds ?? [];
    if (coupon && bed)
      saveFile(fileName(`kerf test ${profile.name}`, format), bedFile(coupon, bed, format, profile.dxf), type);
  };
  return (
    <section aria-labelledby={title}>
      <h3 id={title}>Kerf test</h3>
      <p>
        Two rows of {COUPON.strips} strips, cut on their lines without any allowance. Push the strips of a row together
        and measure across all of them.
      </p>
      {whyNot !== null && <p className="issue">{whyNot}</p>}
      <div className="row">
        {FORMATS.map(({ format, title, type }) => (
          <button key={format} type="button" disabled={coupon === null} onClick={() => save(format, type)}>
            Test as {title}
          </button>
        ))}
      </div>
      <div className="kerf-entries">
        {ENTRIES.map(([entry, title, help]) => {
          const read = entry === 'leather' ? null : reading(entry);
          return (
            <PlainField
              key={entry}
              title={title}
              help={help}
              text={typed[entry]}
              change={(text) => type({ ...typed, [entry]: text })}
              issues={read !== null && !read.ok ? [read.message] : []}
            />
          );
        })}
      </div>
      {refused !== null && <p className="issue">{refused}</p>}
      {found !== null && (
        <>
          <p>
            Kerf {found.kerf.toFixed(3)} mm, give or take {found.doubt.toFixed(3)} mm. Across {found.across.toFixed(3)}{' '}
            mm, along {found.along.toFixed(3)} mm.
          </p>
          {found.differs && (
            <p className="caution">
              Caution. The rows differ by more than the reading explains. Read them again, and check that the bed is
              square and the beam round.
            </p>
          )}
          <button
            type="button"
            className="main"
            disabled={typed.leather.trim() === '' || thickness === null || thickness < 0.2 || thickness > 8}
            onClick={() => {
              put(withKerf(profile, typed.leather, thickness!, found.kerf));
              take(`${typed.leather.trim()} at ${thickness} mm is in the table with ${found.kerf.toFixed(3)} mm.`);
            }}
          >
            Put it into the table
          </button>
        </>
      )}
      <p role="status">{taken}</p>
    </section>
  );
}

/** What is made, or why it cannot be. */
function tried<T>(make: () => T): [T, null] | [null, string] {
  try {
    return [make(), null];
  } catch (error) {
    return [null, (error as RangeError).message];
  }
}
