import { useMemo } from 'react';
import { type CoverPicture, useCoverPicture } from '../stage/coverPicture.ts';
import { usePrintedPictures } from '../stage/usePrintedPictures.ts';

/** The two covers of the page, drawn anew whenever it is printed. */
export function useCoverPictures(): { readonly closed: CoverPicture; readonly open: CoverPicture } {
  const closed = useCoverPicture();
  const open = useCoverPicture();
  usePrintedPictures(useMemo(() => [closed, open], [closed, open]));
  return useMemo(() => ({ closed, open }), [closed, open]);
}
