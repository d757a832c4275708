import { LeatherList } from './LeatherList.tsx';
import { LeatherPage } from './LeatherPage.tsx';
import './leathers.css';

/** The maker's leathers; or one of them, where the address names it. */
export default function LeathersPlace({ part }: { readonly part: string }) {
  return part === '' ? <LeatherList /> : <LeatherPage id={part} />;
}
