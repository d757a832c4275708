import { layOut } from '../../../core/materials/layout/layout.ts';
import { layoutFaults } from '../../../core/materials/layout/layoutFaults.ts';
import type { LayoutAnswer, LayoutQuestion } from './layoutMessage.ts';

self.onmessage = ({ data: { outlines, hide, clearance } }: MessageEvent<LayoutQuestion>) => {
  const layout = layOut(outlines, hide, clearance);
  const answer: LayoutAnswer = { layout, faults: layoutFaults(layout, outlines, hide, clearance) };
  self.postMessage(answer);
};
