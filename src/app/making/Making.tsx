import { lazy } from 'react';
import { WithTerm } from '../fields/Term.tsx';
import { LatePart } from '../loading/LatePart.tsx';
import { addressOf } from '../state/place.ts';
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

/** The order of work one step a screen: a part of its own, without the row of the others. */
const MakingSteps = lazy(() => import('./steps/MakingSteps.tsx'));

/** The part that the workbench shows first. */
const FIRST = PARTS[1];

/** The workbench: a row of its parts, each with an address of its own, and the one in it. */
export default function Making({ part }: { readonly part: string }) {
  if (part === 'steps')
    return (
      <section className="workbench" aria-label="Workbench">
        <LatePart name="steps">
          <MakingSteps />
        </LatePart>
      </section>
    );
  const shown = PARTS.find(({ id }) => id === part) ?? FIRST;
  return (
    <section className="workbench" aria-label="Workbench">
      <nav className="workbench-parts not-printed" aria-label="Parts of the workbench">
        {PARTS.map(({ id, title }) => (
          <a
            key={id}
            className="link"
            href={addressOf('workbench', id)}
            aria-current={id === shown.id ? 'page' : undefined}
          >
            {title}
          </a>
        ))}
      </nav>
      <div className="workbench-panel">
        <h2>
          <WithTerm text={shown.title} />
        </h2>
        <LatePart key={shown.id} name={shown.title.toLowerCase()}>
          <shown.Panel />
        </LatePart>
      </div>
    </section>
  );
}
