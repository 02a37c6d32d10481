import type { PlotOptions } from '@observablehq/plot';

/** One stop of the keyboard's way along a plot. */
interface PlotStop {
  readonly frame: number;
  /** "0.52 s: toe −0.21 m" */
  readonly words: string;
}

export interface PlotTable {
  readonly heads: readonly string[];
  /** A row leads to its frame when it has one. */
  readonly rows: readonly { readonly frame: number | null; readonly cells: readonly string[] }[];
}

/** All that the panel shows of one plot. */
export interface PlotView {
  /** One sentence on what is to be seen, for those who hear it. */
  readonly label: string;
  readonly options: PlotOptions;
  readonly stops: readonly PlotStop[];
  readonly table: PlotTable;
  /** Whether x is true seconds, so that the playhead has a place on it. */
  readonly overTime: boolean;
  /** Signs and lines in words; shape and colour both. */
  readonly legend: readonly {
    readonly sign: 'dot' | 'ring' | 'triangle' | 'square' | 'line' | 'dash' | 'band' | 'bar';
    readonly tone: string;
    readonly words: string;
  }[];
}

const grid = 'var(--line)';

/** What all plots share: margins for big letters, thin grid, axes in the ink. */
export const plotFrame = {
  marginTop: 22,
  marginRight: 18,
  marginBottom: 34,
  marginLeft: 56,
  grid: false,
  x: { tickSize: 4 },
  y: { tickSize: 4, nice: true },
} as const satisfies PlotOptions;
export const gridStroke = { stroke: grid, strokeOpacity: 1 } as const;
