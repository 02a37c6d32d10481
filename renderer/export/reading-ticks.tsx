import { useMemo } from 'react';
import { type ExportSource, namedReadings } from '#core/exporting/export-source';
import { mostStillReadings } from '#core/exporting/still-content';
import { neverCompared } from '#core/measures/never-compared';
import { exportWords } from '#core/words/export';

interface Props {
  readonly source: ExportSource;
  /** Ids of those chosen, in the order they stand on the picture. */
  readonly chosen: readonly string[];
  readonly disabled: boolean;
  readonly onChoose: (chosen: readonly string[]) => void;
}

/** Which readings stand on stills and sheets: those that can be computed, a few at most. */
export function ReadingTicks({ source, chosen, disabled, onChoose }: Props) {
  const rows = useMemo(
    () =>
      namedReadings(
        source,
        source.definitions.map(({ id }) => id).filter((id) => !neverCompared(id)),
      ),
    [source],
  );
  if (rows.length === 0) return <small>{exportWords('noReadingsYet')}</small>;
  return (
    <details className="export-readings">
      <summary>{exportWords('readingsStillsSheet', { chosen: chosen.length, mostStillReadings })}</summary>
      <div>
        {rows.map(({ definition: { id, label } }) => {
          const on = chosen.includes(id);
          return (
            <label key={id}>
              <input
                type="checkbox"
                checked={on}
                disabled={disabled || (!on && chosen.length >= mostStillReadings)}
                onChange={() => onChoose(on ? chosen.filter((each) => each !== id) : [...chosen, id])}
              />
              {label}
            </label>
          );
        })}
      </div>
    </details>
  );
}
