import { type Layout, layOut, layoutFaults } from '../../../core/index.ts';
import type { LayoutQuestion } from '../../../output/layout/layoutQuestions.ts';
import { serveQuestions } from '../../worker/serveQuestions.ts';

export interface LayoutAnswer {
  readonly layout: Layout;
  /** Rules that the layout breaks; none for a sound one. */
  readonly faults: readonly string[];
}

serveQuestions<LayoutQuestion, LayoutAnswer>(({ outlines, hide, clearance }) => {
  const layout = layOut(outlines, hide, clearance);
  return { layout, faults: layoutFaults(layout, outlines, hide, clearance) };
});
