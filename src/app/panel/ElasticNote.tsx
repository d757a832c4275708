import { useBench } from '../state/BenchContext.tsx';

/** Says that the springy model gave no answer, and what is known without it. */
export default function ElasticNote() {
  const elastic = useBench((bench) => bench.elastic);
  if (elastic.status !== 'gaveUp') return null;
  return (
    <div className="refused" role="status">
      <p>
        The springy model has no answer for this cover: {elastic.why}. Whether the cover springs open, and where its
        spare wrap goes, is not known. Sizes, gaps, template and files come from the quick model and are complete.
      </p>
      <button type="button" onClick={elastic.retry}>
        Try it again
      </button>
    </div>
  );
}
