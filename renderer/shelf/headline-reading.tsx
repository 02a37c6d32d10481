import type { SwimSummary } from '#core/host-contract/operations/library-operations';
import { catalogue } from '#core/measures/families';
import { undoubted } from '#core/measures/doubtful';
import { kickDoubt } from '#core/measures/kick-doubt';
import type { ReadingUnit } from '#core/measures/reading';
import { kickDoubtWords } from '#core/measures/kick-doubt-words';
import { formatReading } from '#core/measures/format-reading';
import { shelfWords } from '#core/words/shelf';

const definitions = new Map(catalogue.map((each) => [each.id, each]));

/** A reading on a tile, printed as on the bench: value ± half its 95 % interval, and the unit. */
export function HeadlineReading({
  reading,
  slowdown,
}: {
  readonly reading: SwimSummary['headline'][number];
  readonly slowdown: number;
}) {
  const { id, value, half } = reading;
  const definition = definitions.get(id);
  const text = formatReading(
    {
      ...{ id, value, unit: reading.unit as ReadingUnit, ...undoubted },
      interval: { low: value - half, high: value + half },
    },
    definition?.digits ?? 2,
  );
  const doubt = id === 'kick-frequency' ? kickDoubt(value, slowdown) : null;
  return (
    <>
      <span className="headline">
        <span>{definition?.label ?? id}</span>
        <span>
          <b>
            {text.value} {text.spread}
          </b>{' '}
          {text.unit}
          {reading.doubtful && <em className="headline-doubtful"> {shelfWords('doubtful')}</em>}
        </span>
      </span>
      {doubt && (
        <span className="headline-doubt" title={kickDoubtWords(doubt)}>
          {shelfWords('slowMotionRight')}
        </span>
      )}
    </>
  );
}
