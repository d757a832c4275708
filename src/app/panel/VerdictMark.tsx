import type { Verdict } from '../../core/index.ts';
import './panel.css';

/**
 * A mark of its own shape for each verdict: a closed lozenge, a half one, one with room round a smaller one, an open
 * one struck through; an open one with a dot for what is not known, and a bare stroke for a row that only informs.
 */
export function VerdictMark({ verdict }: { readonly verdict: Verdict }) {
  return (
    <svg className="mark" data-verdict={verdict} viewBox="0 0 16 16" aria-hidden="true" focusable="false">
      {verdict !== 'none' && <path d="M8 1 15 8 8 15 1 8Z" />}
      {verdict === 'fits' && <path className="filling" d="M8 1 15 8 8 15 1 8Z" />}
      {verdict === 'tight' && <path className="filling" d="M8 1V15L1 8Z" />}
      {verdict === 'loose' && <path className="filling" d="M8 5 11 8 8 11 5 8Z" />}
      {verdict === 'unknown' && <circle className="filling" cx="8" cy="8" r="1.5" />}
      {verdict === 'none' && <path d="M3 8H13" />}
      {verdict === 'fails' && <path className="strike" d="M4.5 4.5 11.5 11.5M11.5 4.5 4.5 11.5" />}
    </svg>
  );
}
