import { layOut, layoutFaults } from '../../../core/index.ts';
import { serveQuestions } from '../../worker/serveQuestions.ts';
import type { LayoutAnswer, LayoutQuestion } from './useLayout.ts';

serveQuestions<LayoutQuestion, LayoutAnswer>(({ outlines, hide, clearance }) => {
  const layout = layOut(outlines, hide, clearance);
  return { layout, faults: layoutFaults(layout, outlines, hide, clearance) };
});
