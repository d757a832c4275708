import { useMemo } from 'react';
import { type CoverPicture, useCoverPicture } from '../stage/coverPicture.ts';
import { usePrintedPictures } from '../stage/usePrintedPictures.ts';

export type CoverPictures = Readonly<Record<'closed' | 'open', CoverPicture>>;

/** The two covers of the page, drawn anew whenever it is printed. */
export function useCoverPictures(): CoverPictures {
  const closed = useCoverPicture();
  const open = useCoverPicture();
  usePrintedPictures(useMemo(() => [closed, open], [closed, open]));
  return useMemo(() => ({ closed, open }), [closed, open]);
}
