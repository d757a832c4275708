import {
  coverDesign,
  designReport,
  isRecord,
  type Job,
  type JobIssue,
  type JobRecord,
  openJob,
  parseJob,
  patched,
} from '../../core/index.ts';
import { customerSheet } from '../customerSheet/customerSheet.ts';
import { type Offer, offeredPrice, offerSchema } from '../customerSheet/offer.ts';
import { otherWeights } from '../customerSheet/otherWeights.ts';
import { linkText, readLinkText, refusedLink } from './linkText.ts';

const PREFIX = /^#?customer=/;

/** Whether an address's fragment claims to be a link for a customer, sound or damaged. */
export const isCustomerFragment = (fragment: string): boolean => PREFIX.test(fragment);

/** A job as it was sent to a customer. */
export interface SentCover {
  readonly document: JobRecord;
  readonly job: Job;
  readonly offer: Offer;
}

export type ReadCustomerLink =
  | ({ readonly ok: true } & SentCover)
  | { readonly ok: false; readonly issues: readonly JobIssue[] };

/**
 * Writes what a customer sees of a job as the fragment of an address: `#customer=4.<text>`. Rates stay behind, also where the
 * price is shown: the link holds amounts, not how they come about. So do the hides owned, the ticks of the work and the readings of
 * a card trial, and doubts that change no word of the customer's sheet.
 * @param document the job as written, in the current version
 * @param offer with `prices` null for none shown; left out, they are computed from the rates of the job
 * @returns null where it would be too long to be read
 */
export function customerFragment(document: JobRecord, job: Job, offer: Offer): string | null {
  const sent = { ...offer, prices: offer.prices === undefined ? pricesOf(job, offer) : offer.prices };
  const shown = withoutMakersOwn(document, job);
  const { doubts: _, ...plain } = shown;
  const isSame = JSON.stringify(sheetOf(plain, sent)) === JSON.stringify(sheetOf(shown, sent));
  const text = linkText({ offer: sent, job: isSame ? plain : shown }, '#customer='.length);
  return text && `#customer=${text}`;
}

/** Reads a job that was sent to a customer; never throws. */
export function readCustomerFragment(fragment: string): ReadCustomerLink {
  const read = readLinkText(fragment, PREFIX);
  if (!read.ok) return read;
  const { value } = read;
  const offer = offerSchema.safeParse(isRecord(value) ? value.offer : undefined);
  if (!isRecord(value) || !offer.success)
    return refusedLink('unreadable', 'a link that does not hold an offer', 'a link as the maker sent it');
  const opened = openJob(value.job);
  return opened.ok ? { ...opened, offer: offer.data } : opened;
}

function pricesOf(job: Job, offer: Offer): NonNullable<Offer['prices']> {
  const { lighter, heavier } = otherWeights(job, offer);
  return {
    lighter: lighter && offeredPrice(lighter),
    chosen: offeredPrice(coverDesign(job)),
    heavier: heavier && offeredPrice(heavier),
  };
}

/** The document without what only the maker needs; of the rates only who makes the cover. */
function withoutMakersOwn(document: JobRecord, { rates: { maker } }: Job): JobRecord {
  const { rates: _rates, hides: _hides, made: _made, mockup: _mockup, outcome: _outcome, ...rest } = document;
  const shown = patched(
    rest,
    (['outside', 'pocket', 'lining'] as const).map((piece) => ({ path: `leather.${piece}.taken`, value: undefined })),
  );
  return maker === '' ? shown : { ...shown, rates: { maker } };
}

/** What a customer would read; null where the document does not parse. */
function sheetOf(document: JobRecord, offer: Offer) {
  const parsed = parseJob(document);
  if (!parsed.ok) return null;
  const design = coverDesign(parsed.job);
  return customerSheet(design, designReport(design), offer);
}
