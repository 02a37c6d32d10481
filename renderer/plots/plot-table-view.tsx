import type { FramePoint } from './plot-figure';
import type { PlotTable } from './plot-view';
import { plotsWords } from '#core/words/plots';

interface Props {
  readonly table: PlotTable;
  readonly label: string;
  readonly onChoose: (point: FramePoint) => void;
}

/** The plot as numbers; a row's first cell leads to its frame. */
export function PlotTableView({ table, label, onChoose }: Props) {
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reachable by keyboard
    <section className="plot-table" aria-label={plotsWords('numbers', { label })} tabIndex={0}>
      <table>
        <thead>
          <tr>
            {table.heads.map((head) => (
              <th key={head} scope="col">
                {head}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {table.rows.map(({ frame, cells }, row) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: rows have no name of their own and never change places
            <tr key={row}>
              {cells.map((cell, column) =>
                column === 0 ? (
                  <th key={table.heads[column]} scope="row">
                    {frame === null ? (
                      cell
                    ) : (
                      <button
                        type="button"
                        onClick={() => onChoose({ frame })}
                        title={plotsWords('showFrame', { frame: frame + 1 })}
                      >
                        {cell}
                      </button>
                    )}
                  </th>
                ) : (
                  <td key={table.heads[column]}>{cell}</td>
                ),
              )}
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}
