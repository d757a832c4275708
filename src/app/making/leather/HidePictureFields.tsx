import { useState } from 'react';
import { distance, parseLength } from '../../../core/index.ts';
import { FileButton } from '../../fields/FileButton.tsx';
import { PlainField } from '../../fields/PlainField.tsx';
import { useLengths } from '../../state/BenchContext.tsx';
import { openPicture } from './openPicture.ts';
import { openSheetPicture } from './openSheetPicture.ts';
import { type HidePicture, isDoubtful, pointsIssue, type SeenLeather, scaleDoubt, scaledBy } from './pictureScale.ts';
import { SheetReading } from './SheetReading.tsx';
import type { AddedPicture } from './useHidePicture.ts';

/** Lengths that two points of a hide can have, mm. */
const LENGTHS = { min: 1, max: 10_000 };

interface HidePictureFieldsProps {
  readonly picture: HidePicture | null;
  readonly put: (picture: HidePicture | null) => void;
  /** Begins with a picture, which may have no scale yet. */
  readonly add: (picture: AddedPicture) => void;
  readonly isScaling: boolean;
  readonly setScaling: (isScaling: boolean) => void;
  /** Puts the leather that the picture shows into the job. */
  readonly takeSeen: (seen: SeenLeather) => void;
  readonly layBackbone: () => void;
}

/** The picture of the hide under the drawing, and its scale by two points. */
export function HidePictureFields(props: HidePictureFieldsProps) {
  const { picture, put, add, isScaling, setScaling, takeSeen, layBackbone } = props;
  const lengths = useLengths();
  const [reading, setReading] = useState<{ readonly isOpening: boolean; readonly why: string | null }>({
    isOpening: false,
    why: null,
  });
  const [isMirrored, mirror] = useState(false);
  const [typed, setTyped] = useState('');
  const [refused, setRefused] = useState<string | null>(null);
  const open = async (file: File): Promise<void> => {
    setReading({ isOpening: true, why: null });
    try {
      const bySheet = await openSheetPicture(file, isMirrored);
      add({ name: file.name, ...(bySheet ?? (await openPicture(file))) });
      setReading({ isOpening: false, why: null });
    } catch (error) {
      setReading({ isOpening: false, why: error instanceof Error ? error.message : String(error) });
    }
  };
  const percent = (share: number): string => lengths.share(share, 1);
  const scale = (): void => {
    const read = parseLength(typed, { defaultUnit: lengths.units, range: LENGTHS });
    const issue = !read.ok
      ? read.message
      : read.value < LENGTHS.min
        ? `The distance of the two points is ${LENGTHS.min} mm at least. Measure between places farther apart.`
        : pointsIssue(picture!, percent);
    setRefused(issue);
    if (!read.ok || issue !== null) return;
    put(scaledBy(picture!, read.value));
    setScaling(false);
  };
  const doubt = picture === null ? 0 : scaleDoubt(picture);
  return (
    <div className="hide-picture">
      <div className="row">
        <FileButton
          title={picture === null ? 'Put a picture of the hide under it' : 'Another picture'}
          asks="Picture of the hide"
          accept="image/png,image/jpeg"
          onFile={(file) => void open(file)}
        />
        {picture !== null && (
          <>
            <button type="button" aria-pressed={isScaling} onClick={() => setScaling(!isScaling)}>
              Scale it by two points
            </button>
            {picture.seen !== undefined && (
              <button type="button" onClick={() => takeSeen(picture.seen!)}>
                Take the outline that it shows
              </button>
            )}
            <button type="button" onClick={() => put(null)}>
              Take the picture out
            </button>
          </>
        )}
      </div>
      {picture === null && (
        <label className="check">
          <input type="checkbox" checked={isMirrored} onChange={(event) => mirror(event.target.checked)} />
          The grain side is up in it
        </label>
      )}
      <p role="status" className="help">
        {reading.isOpening && 'The picture is being opened.'}
        {picture?.isScaled === true &&
          !isScaling &&
          `The picture is to scale; the scale may be ${percent(doubt)} off, ${lengths.length(doubt * picture.width * picture.mm)} over its width.${isDoubtful(doubt) ? (picture.sheet === undefined ? ' Points farther apart would make it surer.' : picture.sheet.reading === null ? ' Measure the long bar of the sheet to make it surer.' : ' More pages, farther apart on the hide, would make it surer.') : ''}`}
      </p>
      {reading.why !== null && (
        <p className="issue" role="alert">
          {reading.why}
        </p>
      )}
      {picture?.sheet !== undefined && <SheetReading picture={picture} sheet={picture.sheet} put={put} />}
      {picture !== null && isScaling && (
        <>
          <p className="help">
            Put the points A and B on two places whose distance you know. The ends of a rule that lies on the hide do
            well.
            {picture.isScaled && ` By the present scale they are ${lengths.length(distance(...picture.points))} apart.`}
          </p>
          <PlainField
            title="From A to B"
            help={`As 8 1/2 in or 216 mm. Without a unit: ${lengths.units}.`}
            text={typed}
            change={(text) => {
              setTyped(text);
              setRefused(null);
            }}
            issues={refused === null ? [] : [refused]}
          />
          <div className="row">
            <button type="button" className="main" onClick={scale}>
              Set the scale
            </button>
            <button type="button" onClick={layBackbone}>
              The backbone runs from A to B
            </button>
          </div>
        </>
      )}
      {picture !== null && picture.sheet === undefined && (
        <p className="caution">
          Caution. A picture taken at an angle is not to scale all over. Hold the camera square over the middle of the
          hide. Check a second distance that you know.
        </p>
      )}
      <p className="help">
        {picture === null
          ? 'A picture helps to trace. With pages of the sheet for photographs on the hide, well apart, it comes in flat and to scale. It stays in this window: it is not sent, and not kept in the job.'
          : 'The picture stays in this window and is not kept in the job. What you draw is.'}
      </p>
    </div>
  );
}
