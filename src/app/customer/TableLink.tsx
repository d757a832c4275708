import { useEffect, useState } from 'react';
import { fileName } from '../../output/fileName.ts';
import { useBench } from '../state/BenchContext.tsx';
import { makeModel } from '../take/makeModel.ts';

/** The picture on the link: a box on a table. Devices open such a link at once only where an image is all that it holds. */
const SIGN = `data:image/svg+xml,${encodeURIComponent(
  '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 32 32" fill="none" stroke="#1f4269" stroke-width="2" stroke-linejoin="round"><path d="M16 5l9 4.5v9L16 23l-9-4.5v-9zM7 9.500l9 4.500 9-4.500M16 14v9M2 28h28"/></svg>',
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
    <span className="table-link">
      <a className="link" rel="ar" href={address} download={fileName(name, 'usdz')}>
        <img src={SIGN} alt="See it on your table" />
      </a>
      <span aria-hidden="true">See it on your table</span>
    </span>
  );
}
