import { useState } from 'react';
import { MOST_PRINT_OFF, parseLength } from '../../../core/index.ts';
import { PlainField } from '../../fields/PlainField.tsx';
import { useLengths } from '../../state/BenchContext.tsx';
import { type HidePicture, type PictureSheet, readBy } from './pictureScale.ts';

interface SheetReadingProps {
  readonly picture: HidePicture;
  readonly sheet: PictureSheet;
  readonly put: (picture: HidePicture) => void;
}

/** What a ruler says of the long bar of the sheet in the picture: the print's own size. */
export function SheetReading({ picture, sheet, put }: SheetReadingProps) {
  const lengths = useLengths();
  const [text, setText] = useState(sheet.reading === null ? '' : lengths.size(sheet.reading));
  const [issue, setIssue] = useState<string | null>(null);
  const change = (typed: string): void => {
    setText(typed);
    if (typed.trim() === '') {
      setIssue(null);
      put(readBy(picture, null));
      return;
    }
    const read = parseLength(typed, { defaultUnit: lengths.units });
    const isNear = read.ok && Math.abs(read.value / sheet.bar - 1) <= MOST_PRINT_OFF;
    setIssue(
      !read.ok
        ? read.message
        : isNear
          ? null
          : `The bar was meant to be ${lengths.size(sheet.bar)} long. Measure it again, or print the sheet at actual size, 100 %.`,
    );
    if (read.ok && isNear) put(readBy(picture, read.value));
  };
  return (
    <PlainField
      title="The long bar of the sheet measures"
      help={`Meant to be ${lengths.size(sheet.bar)}. Until you measure it the print counts as ${lengths.share(2 * sheet.uPrint, 0)} in doubt.`}
      placeholder="not measured"
      text={text}
      change={change}
      issues={issue === null ? [] : [issue]}
    />
  );
}
