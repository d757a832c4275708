import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import { EXAMPLE_JOBS } from '../core/job/examples.ts';
import { App } from './App.tsx';
import { LastResort } from './LastResort.tsx';
import { Mishap } from './stage/Mishap.tsx';
import { BenchProvider } from './state/BenchContext.tsx';
import type { JobDocument } from './state/jobDocument.ts';
import './styles/tokens.css';
import './styles/bench.css';
import './styles/drawings.css';
import './styles/print.css';

createRoot(document.getElementById('bench')!).render(
  <StrictMode>
    <Mishap instead={(error, retry) => <LastResort error={error} retry={retry} />}>
      <BenchProvider example={EXAMPLE_JOBS[0]!.document as JobDocument}>
        <App />
      </BenchProvider>
    </Mishap>
  </StrictMode>,
);
