import type { PlotView } from './plot-view';

/** What is what on the plot, by sign and word. */
export function PlotLegend({ view }: { readonly view: PlotView }) {
  return (
    <ul className="plot-legend">
      {view.legend.map(({ sign, tone, words }) => (
        <li key={words}>
          <svg width="22" height="12" viewBox="0 0 22 12" aria-hidden="true" style={{ color: tone }}>
            {sign === 'dot' && <circle cx="11" cy="6" r="4.5" fill="currentColor" />}
            {sign === 'ring' && (
              <circle cx="11" cy="6" r="4" fill="none" stroke="currentColor" strokeWidth="1.8" />
            )}
            {sign === 'triangle' && (
              <path d="M11,1L16,10.5H6Z" fill="none" stroke="currentColor" strokeWidth="1.8" />
            )}
            {sign === 'square' && (
              <path d="M7,2h8v8h-8Z" fill="none" stroke="currentColor" strokeWidth="1.8" />
            )}
            {sign === 'line' && <path d="M1,6H21" stroke="currentColor" strokeWidth="2.5" />}
            {sign === 'dash' && (
              <path d="M1,6H21" stroke="currentColor" strokeWidth="2" strokeDasharray="2 4" />
            )}
            {sign === 'band' && (
              <rect x="2" y="1" width="18" height="10" fill="currentColor" opacity="0.45" />
            )}
            {sign === 'bar' && <path d="M11,0V12M8,0H14M8,12H14" stroke="currentColor" strokeWidth="1.6" />}
          </svg>
          {words}
        </li>
      ))}
    </ul>
  );
}
