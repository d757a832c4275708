import { lazy, useEffect, useId, useRef, useState } from 'react';
import { LatePart } from '../loading/LatePart.tsx';
import './making.css';

const PARTS = [
  { id: 'construction', title: 'Construction', Panel: lazy(() => import('./ConstructionPanel.tsx')) },
  { id: 'template', title: 'Template', Panel: lazy(() => import('./template/TemplatePanel.tsx')) },
  { id: 'trial', title: 'Card trial', Panel: lazy(() => import('./trial/TrialPanel.tsx')) },
  { id: 'leather', title: 'Leather owned', Panel: lazy(() => import('./leather/LeatherPanel.tsx')) },
  { id: 'supplies', title: 'Supplies', Panel: lazy(() => import('./SuppliesPanel.tsx')) },
  { id: 'quote', title: 'Quote', Panel: lazy(() => import('./quote/QuotePanel.tsx')) },
  { id: 'work', title: 'Order of work', Panel: lazy(() => import('./WorkPanel.tsx')) },
] as const;

type PartId = (typeof PARTS)[number]['id'];

/** The panels for the workbench, one open at a time; each is fetched when it is opened. */
export default function Making() {
  const [open, setOpen] = useState<PartId | null>(null);
  const panel = useRef<HTMLDivElement>(null);
  const id = useId();
  const part = PARTS.find((each) => each.id === open);
  useEffect(() => {
    if (open !== null) panel.current?.scrollIntoView({ block: 'start' });
  }, [open]);
  return (
    <section className="workbench not-printed" aria-labelledby={`${id}-title`}>
      <div className="row workbench-bar">
        <h2 id={`${id}-title`}>To the workbench</h2>
        <div className="row">
          {PARTS.map(({ id: name, title }) => (
            <button
              key={name}
              type="button"
              aria-expanded={name === open}
              aria-controls={name === open ? `${id}-panel` : undefined}
              onClick={() => setOpen(name === open ? null : name)}
            >
              {title}
            </button>
          ))}
        </div>
      </div>
      {part !== undefined && (
        <div className="workbench-panel" id={`${id}-panel`} ref={panel}>
          <LatePart key={part.id} name={part.title.toLowerCase()}>
            <part.Panel />
          </LatePart>
        </div>
      )}
    </section>
  );
}
