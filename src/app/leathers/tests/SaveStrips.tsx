import { useState } from 'react';
import { testStripDrawing } from '../../../core/index.ts';
import { fileName } from '../../../output/fileName.ts';
import { today } from '../../../output/today.ts';
import { useLengths } from '../../state/BenchContext.tsx';
import { saveFile } from '../../state/saveFile.ts';

const PAPERS = ['A4', 'Letter'] as const;

/** Saves the strips of all tests, in true size. */
export function SaveStrips({ name }: { readonly name: string }) {
  const { units } = useLengths();
  const [failure, setFailure] = useState<string | null>(null);
  const save = async (paper: (typeof PAPERS)[number]): Promise<void> => {
    try {
      const { patternPdf } = await import('../../../output/pdf/patternPdf.ts');
      const bytes = await patternPdf(testStripDrawing(units, name), { paper, date: today() });
      saveFile(fileName(name, 'test-strips.pdf', [paper]), bytes, 'application/pdf');
      setFailure(null);
    } catch (error) {
      setFailure(error instanceof Error ? error.message : String(error));
    }
  };
  return (
    <div className="row strip-files">
      {PAPERS.map((paper) => (
        <button key={paper} type="button" onClick={() => void save(paper)}>
          <span className={paper === 'A4' ? undefined : 'only-heard'}>Save the strips as PDF, </span>
          {paper}
        </button>
      ))}
      {failure !== null && (
        <span className="issue" role="alert">
          The strips could not be made: {failure}
        </span>
      )}
    </div>
  );
}
