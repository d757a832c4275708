import type { ShelfTrouble } from './shelfTrouble.ts';

/** Why the browser could not store or read. */
export function TroubleNote({ trouble }: { readonly trouble: ShelfTrouble | null }) {
  if (trouble === null) return null;
  return (
    <p className="refused" role="alert">
      {trouble.message} {trouble.remedy}
    </p>
  );
}
