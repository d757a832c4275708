import { layOut } from '../../../core/materials/layout/layout.ts';
import { layoutFaults } from '../../../core/materials/layout/layoutFaults.ts';
import { serveQuestions } from '../../state/serveQuestions.ts';
import type { LayoutAnswer, LayoutQuestion } from './layoutMessage.ts';

serveQuestions<LayoutQuestion, LayoutAnswer>(({ outlines, hide, clearance }) => {
  const layout = layOut(outlines, hide, clearance);
  return { layout, faults: layoutFaults(layout, outlines, hide, clearance) };
});
