import { useMemo } from 'react';
import { type CoverDesign, type Drawing, tooledPattern } from '../../core/index.ts';
import { useLetterFaces } from '../state/useLetterFaces.ts';

/** The pattern of a cover with its tooling; titles come as their letters are loaded. */
export function useTooledPattern(design: CoverDesign): Drawing {
  const { faces } = useLetterFaces(design.job.tooling.designs);
  return useMemo(() => tooledPattern(design, faces), [design, faces]);
}
