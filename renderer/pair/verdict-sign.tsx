import type { PairVerdict } from '#core/compare/pair-table';

/** A verdict's own shape, so that colour never says it alone: solid, hollow, struck out, or nothing. */
export function VerdictSign({ verdict }: { readonly verdict: PairVerdict }) {
  return (
    <svg width="12" height="12" viewBox="-6 -6 12 12" aria-hidden="true">
      {verdict === 'clear' && <path d="M0,-5 L5,0 L0,5 L-5,0Z" fill="var(--ink)" />}
      {verdict === 'within-error' && (
        <path d="M0,-4.4 L4.4,0 L0,4.4 L-4.4,0Z" fill="none" stroke="var(--quiet)" strokeWidth="1.6" />
      )}
      {(verdict === 'unlike' || verdict === 'other-unit') && (
        <path d="M-4,4 L4,-4 M-4,-1 H4 M-4,2 H4" fill="none" stroke="var(--danger)" strokeWidth="1.6" />
      )}
    </svg>
  );
}
