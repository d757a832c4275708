import { lazy } from 'react';
import { LatePart } from '../loading/LatePart.tsx';
import { LeatherList } from './LeatherList.tsx';
import { LeatherPage } from './LeatherPage.tsx';
import './leathers.css';

const OwnCovers = lazy(() => import('./knowledge/OwnCovers.tsx'));

/** The maker's leathers; or one of them, where the address names it. */
export default function LeathersPlace({ part }: { readonly part: string }) {
  if (part !== '') return <LeatherPage id={part} />;
  return (
    <>
      <LeatherList />
      <LatePart name="covers made">
        <OwnCovers />
      </LatePart>
    </>
  );
}
