import { createContext } from 'react';
import type { Started } from './startingJob.ts';

/** What the page started with, read by `useShelfKeeping`. */
export const StartedContext = createContext<Started | null>(null);
