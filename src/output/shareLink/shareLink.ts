import { isRecord, type JobRecord, type OpenedJob, openJob } from '../../core/index.ts';
import { SHARE_PREFIX } from './isShareFragment.ts';
import { linkText, readLinkText } from './linkText.ts';

/**
 * Writes a whole job as the fragment of an address, which browsers never send to a server: `#job=4.<text>`.
 * @param document the job as written
 * @returns the fragment, or null where it would be too long to be read: such a job goes as a file
 */
export function shareFragment(document: JobRecord): string | null {
  const text = linkText(document, '#job='.length);
  return text && `#job=${text}`;
}

/**
 * The job without the maker's own drawings and the designs made of them, which are too long for a link.
 * @returns null where it has none
 */
export function withoutDrawings(document: JobRecord): JobRecord | null {
  const { tooling } = document;
  if (!isRecord(tooling) || !Array.isArray(tooling.artworks)) return null;
  const { artworks: _, designs, ...rest } = tooling;
  const kept = Array.isArray(designs) ? designs.filter((design) => !isRecord(design) || design.kind !== 'drawing') : [];
  return { ...document, tooling: { ...rest, designs: kept } };
}

/**
 * Reads the job back out of an address's fragment.
 * @param fragment with or without its leading `#`
 * @returns the job, or why nothing was opened: a link damaged, too long, unpacking to too much, of a later layout, or
 *   holding an invalid job; never throws
 */
export function readShareFragment(fragment: string): OpenedJob {
  const read = readLinkText(fragment, SHARE_PREFIX);
  return read.ok ? openJob(read.value) : read;
}
