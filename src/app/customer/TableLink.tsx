import { useEffect, useState } from 'react';
import { fileName } from '../../output/fileName.ts';
import { useBench } from '../state/BenchContext.tsx';
import { makeModel } from '../take/makeModel.ts';

/** What the link shows, a box on a table and its words: devices open such a link at once only where an image is all that it holds. */
const SIGN = `data:image/svg+xml,${encodeURIComponent(
  [
    '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 168 28" fill="#1f4269">',
    '<path fill="none" stroke="#1f4269" stroke-width="1.5" d="M14,4l8,4v8l-8,4-8-4v-8zM6,8l8,4,8-4M14,12v8M2,25h24"/>',
    '<text x="34" y="19" font-family="sans-serif" font-size="14">See it on your table</text>',
    '</svg>',
  ].join(''),
)}`;

/** A link to the cover as USDZ, for devices that lay such a model on the table by themselves. */
export function TableLink() {
  const { job, name } = useBench(({ history: { good } }) => ({ job: good.job, name: good.document.name }));
  const [address, setAddress] = useState<string | null>(null);
  const [failure, setFailure] = useState<string | null>(null);
  useEffect(() => {
    const stop = new AbortController();
    let made: string | null = null;
    setAddress(null);
    setFailure(null);
    makeModel(job, 'usdz', stop.signal).then(
      (bytes) => {
        if (stop.signal.aborted) return;
        made = URL.createObjectURL(new Blob([bytes], { type: 'model/vnd.usdz+zip' }));
        setAddress(made);
      },
      (why: Error) => {
        if (!stop.signal.aborted) setFailure(why.message);
      },
    );
    return () => {
      stop.abort();
      if (made !== null) URL.revokeObjectURL(made);
    };
  }, [job]);
  if (failure !== null)
    return (
      <span className="issue" role="alert">
        The model for your table could not be made: {failure}
      </span>
    );
  if (address === null) return <span className="help">The model for your table is being made.</span>;
  return (
    <a className="table-link" rel="ar" href={address} download={fileName(name, 'usdz')}>
      <img src={SIGN} alt="See it on your table" />
    </a>
  );
}
