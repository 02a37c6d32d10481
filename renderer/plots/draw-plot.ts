import { plot, type PlotOptions } from '@observablehq/plot';

/** A drawn plot: where a value lies, to put the playhead on it. */
export type DrawnPlot = ReturnType<typeof plot>;

/**
 * A plot for a box that says in words what it shows (role "img" and a label): the drawing itself is silent, because
 * its parts are named for their makers. The library's own style rules are taken out, since the content policy lets no
 * style of a page's own making in; they are in plots.css.
 */
export function drawPlot(options: PlotOptions): DrawnPlot {
  const drawn = plot({ ...options, className: 'plot' });
  for (const style of drawn.querySelectorAll('style')) style.remove();
  drawn.setAttribute('aria-hidden', 'true');
  return drawn;
}
