import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import * as z from 'zod/mini';
import { EXAMPLE_JOBS } from '../core/job/examples.ts';
import type { JobDocument } from '../core/job/jobDocument.ts';
import { LastResort } from './LastResort.tsx';
import { Pages } from './Pages.tsx';
import { Mishap } from './stage/Mishap.tsx';
import { BenchProvider } from './state/BenchContext.tsx';
import './styles/tokens.css';
import './styles/bench.css';
import './styles/drawings.css';
import './styles/print.css';

// The page's security policy lets no text be made into code, which zod would try for speed.
z.config({ jitless: true });

createRoot(document.getElementById('bench')!).render(
  <StrictMode>
    <Mishap instead={(error, retry) => <LastResort error={error} retry={retry} />}>
      <BenchProvider example={EXAMPLE_JOBS[0]!.document as JobDocument}>
        <Pages />
      </BenchProvider>
    </Mishap>
  </StrictMode>,
);
