import { type ComponentType, lazy, useEffect, useRef } from 'react';
import { WithTerm } from '../fields/Term.tsx';
import { LatePart } from '../loading/LatePart.tsx';
import { addressOf } from '../state/place.ts';
import { JobVersion } from './JobVersion.tsx';
import './making.css';
import { WORKBENCH_GROUPS, WORKBENCH_PARTS, type WorkbenchPartId } from './workbenchParts.ts';

const PANELS: Readonly<Record<WorkbenchPartId, ComponentType>> = {
  construction: lazy(() => import('./ConstructionPanel.tsx')),
  tooling: lazy(() => import('./tooling/ToolingPanel.tsx')),
  template: lazy(() => import('./template/TemplatePanel.tsx')),
  machine: lazy(() => import('./machine/MachinePanel.tsx')),
  drafting: lazy(() => import('./drafting/DraftingPanel.tsx')),
  trial: lazy(() => import('./trial/TrialPanel.tsx')),
  leather: lazy(() => import('./leather/LeatherPanel.tsx')),
  supplies: lazy(() => import('./SuppliesPanel.tsx')),
  work: lazy(() => import('./WorkPanel.tsx')),
  outcome: lazy(() => import('./outcome/OutcomePanel.tsx')),
  quote: lazy(() => import('./quote/QuotePanel.tsx')),
};

/** The order of work one step a screen: a part of its own, without the row of the others. */
const MakingSteps = lazy(() => import('./steps/MakingSteps.tsx'));

/** The part that the workbench shows first. */
const FIRST = WORKBENCH_PARTS.find(({ id }) => id === 'template')!;

/** The workbench: a row of its parts, each with an address of its own, and the one in it. */
export default function Making({ part }: { readonly part: string }) {
  const row = useRef<HTMLElement>(null);
  const shown = WORKBENCH_PARTS.find(({ id }) => id === part) ?? FIRST;
  const address = addressOf('workbench', shown.id);
  // On a telephone the row of the parts is wider than the screen.
  useEffect(() => {
    const link = row.current?.querySelector<HTMLElement>(`a[href="${address}"]`);
    if (row.current && link)
      row.current.scrollLeft = link.offsetLeft - (row.current.clientWidth - link.offsetWidth) / 2;
  }, [address]);
  if (part === 'steps')
    return (
      <section className="workbench" aria-label="Workbench">
        <LatePart name="list of steps">
          <MakingSteps />
        </LatePart>
      </section>
    );
  const Panel = PANELS[shown.id];
  return (
    <section className="workbench" aria-label="Workbench">
      <nav ref={row} className="workbench-parts not-printed" aria-label="Parts of the workbench">
        {WORKBENCH_GROUPS.map(({ title: group, parts }) => (
          <ul key={group} aria-label={group} data-group={group}>
            {parts.map(({ id, title }) => (
              <li key={id}>
                <a
                  className="link"
                  href={addressOf('workbench', id)}
                  aria-current={id === shown.id ? 'page' : undefined}
                >
                  {title}
                </a>
              </li>
            ))}
          </ul>
        ))}
      </nav>
      <div className="workbench-panel">
        <h2>
          <WithTerm text={shown.title} />
        </h2>
        <JobVersion />
        <LatePart key={shown.id} name={shown.title.toLowerCase()}>
          <Panel />
        </LatePart>
      </div>
    </section>
  );
}
