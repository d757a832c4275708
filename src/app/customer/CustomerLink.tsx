import { useId, useState } from 'react';
import type { Job, JobRecord } from '../../core/index.ts';
import type { Offer } from '../../output/customerSheet/offer.ts';
import { customerFragment } from '../../output/shareLink/customerLink.ts';
import { withoutDrawings } from '../../output/shareLink/shareLink.ts';
import '../shelf/shareLink.css';

interface CustomerLinkProps {
  readonly document: JobRecord;
  readonly job: Job;
  readonly offer: Offer;
  readonly hasPrice: boolean;
}

interface Made {
  /** The whole address; null where the job is too long for one. */
  readonly link: string | null;
  readonly isWhole: boolean;
  readonly isCopied: boolean;
}

/** Makes a link that opens this page elsewhere, to be read only. Whether it shows the price is asked before it is made. */
export function CustomerLink(props: CustomerLinkProps) {
  const [isAsking, setAsking] = useState(false);
  return (
    <>
      <button type="button" aria-expanded={isAsking} onClick={() => setAsking(!isAsking)}>
        Link for the customer
      </button>
      {isAsking && <LinkMaker {...props} onClose={() => setAsking(false)} />}
    </>
  );
}

function LinkMaker({ document, job, offer, hasPrice, onClose }: CustomerLinkProps & { readonly onClose: () => void }) {
  const [showsPrice, setShowsPrice] = useState(false);
  const [made, setMade] = useState<Made | null>(null);
  const id = useId();
  const choose = (shows: boolean): void => {
    setShowsPrice(shows);
    setMade(null);
  };
  const make = async (): Promise<void> => {
    const { prices: _, ...rest } = offer;
    const sent = hasPrice && showsPrice ? rest : { ...rest, prices: null };
    const whole = customerFragment(document, job, sent);
    const plain = whole === null ? withoutDrawings(document) : null;
    const fragment = whole ?? (plain && customerFragment(plain, job, sent));
    const { origin, pathname, search } = window.location;
    const link = fragment === null ? null : `${origin}${pathname}${search}${fragment}`;
    setMade({ link, isWhole: whole !== null, isCopied: link !== null && (await isCopied(link)) });
  };
  return (
    <div className="noted share-note customer-link">
      <p>
        The link opens this page on another machine, to be read only. It has no rates, hides or notes of yours in it.
      </p>
      {hasPrice && (
        <fieldset className="row">
          <legend className="only-heard">Price in the link</legend>
          {[false, true].map((shows) => (
            <label className="tick" key={String(shows)}>
              <input type="radio" name={`${id}-price`} checked={showsPrice === shows} onChange={() => choose(shows)} />
              <span>{shows ? 'With the price' : 'Without the price'}</span>
            </label>
          ))}
        </fieldset>
      )}
      <div className="row">
        <button type="button" onClick={() => void make()}>
          Make the link
        </button>
        <button type="button" onClick={onClose}>
          Close this note
        </button>
      </div>
      <p role="status">{made && words(made)}</p>
      {made !== null && made.link !== null && (
        <input
          type="text"
          readOnly
          aria-label="Link for the customer"
          value={made.link}
          onFocus={(event) => event.target.select()}
        />
      )}
    </div>
  );
}

/** Pages that are not secure, and browsers that ask first, may refuse. */
async function isCopied(link: string): Promise<boolean> {
  try {
    await navigator.clipboard.writeText(link);
    return true;
  } catch {
    return false;
  }
}

function words({ link, isWhole, isCopied }: Made): string {
  if (link === null) return 'This job is too long for a link: send the page as a PDF.';
  const lacks = isWhole ? '' : ' Your own drawings are too long for a link and stay behind.';
  return `${isCopied ? 'The link is copied.' : 'Copy this link.'}${lacks}`;
}
