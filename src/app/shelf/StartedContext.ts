import { createContext } from 'react';
import type { Started } from './startingJob.ts';

/** What the page started with, for the part that keeps the job. */
export const StartedContext = createContext<Started | null>(null);
