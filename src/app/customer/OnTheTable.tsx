import { useEffect, useRef, useState } from 'react';
import { useBench } from '../state/BenchContext.tsx';
import { TableLink } from './TableLink.tsx';
import { type TableWay, tableWay } from './table/tableWay.ts';

/** Shows the cover on the customer's own table where the device can; says why not where it cannot. */
export function OnTheTable() {
  const design = useBench(({ design }) => design);
  const [way, setWay] = useState<TableWay>({ kind: 'asking' });
  const [state, setState] = useState<'idle' | 'shown' | { readonly failed: string }>('idle');
  const overlay = useRef<HTMLDivElement>(null);
  const session = useRef<XRSession>(null);
  useEffect(() => {
    void tableWay().then(setWay);
    return () => void session.current?.end().catch(() => {});
  }, []);
  if (way.kind === 'asking') return null;
  if (way.kind === 'link') return <TableLink />;
  if (way.kind === 'none')
    return (
      <details className="on-table">
        <summary>On your own table?</summary>
        <p className="help">{way.why}</p>
      </details>
    );

  const show = async (): Promise<void> => {
    try {
      setState('shown');
      // Asked for first: the browser allows it only while the press is fresh.
      session.current = await way.system.requestSession('immersive-ar', {
        requiredFeatures: ['hit-test'],
        optionalFeatures: ['dom-overlay'],
        ...(overlay.current && { domOverlay: { root: overlay.current } }),
      });
      const { placeOnTable } = await import('./table/placeOnTable.ts');
      await placeOnTable(design, session.current);
      setState('idle');
    } catch (error) {
      void session.current?.end().catch(() => {});
      setState({ failed: error instanceof Error ? error.message : String(error) });
    } finally {
      session.current = null;
    }
  };
  return (
    <>
      <button type="button" disabled={state === 'shown'} onClick={() => void show()}>
        See it on your table
      </button>
      {typeof state === 'object' && (
        <span className="issue" role="alert">
          The camera view was not opened: {state.failed}
        </span>
      )}
      <div ref={overlay} className="table-overlay" hidden={state !== 'shown'}>
        <p>Point the camera at the table. Tap where the book is to lie.</p>
        <button type="button" className="main" onClick={() => void session.current?.end()}>
          Close the camera view
        </button>
      </div>
    </>
  );
}
