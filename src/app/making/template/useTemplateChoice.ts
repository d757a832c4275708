import { useEffect, useState } from 'react';
import { keepTemplateChoice, keptTemplateChoice, type TemplateChoice } from './templateChoice.ts';

/** The choice of a template as it was kept, and how to change it. */
export function useTemplateChoice(): readonly [TemplateChoice, (change: Partial<TemplateChoice>) => void] {
  const [choice, setWholeChoice] = useState(keptTemplateChoice);
  useEffect(() => void keepTemplateChoice(choice), [choice]);
  return [choice, (change) => setWholeChoice((whole) => ({ ...whole, ...change }))];
}
