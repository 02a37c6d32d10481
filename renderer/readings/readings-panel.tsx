import { useMemo, useState } from 'react';
import { useStore } from 'zustand';
import {
  type Reading,
  type ReadingDefinition,
  type ReadingGroup,
  readingGroups,
} from '#core/measures/reading';
import { useBench } from '../bench/bench-session';
import { ReadingRow } from './reading-row';
import { WaveProfile } from './wave-profile';
import './readings.css';

const groupWords: Readonly<Record<ReadingGroup, string>> = {
  timing: 'Timing',
  kick: 'Kick',
  'body-wave': 'Body wave',
  posture: 'Posture',
  speed: 'Speed',
  stroke: 'Stroke',
  course: 'Course',
};
/** Timing first: it is what the coach came for. */
const order: readonly ReadingGroup[] = [
  'timing',
  'kick',
  ...readingGroups.filter((group) => group !== 'timing' && group !== 'kick'),
];

/** All readings of the swim by group; what can't be had is folded under each group, with the reason. */
export function ReadingsPanel({ catalogue }: { readonly catalogue: readonly ReadingDefinition[] }) {
  const session = useBench();
  const readings = useStore(session.readings.store, (state) => state.readings);
  const tookMs = useStore(session.readings.store, (state) => state.tookMs);
  const swimmer = useStore(session.swimmer, (state) => state.swimmer);
  const byId = useMemo(() => new Map(readings.map((reading) => [reading.id, reading])), [readings]);
  return (
    <aside className="readings" aria-label="Readings" data-took-ms={tookMs.toFixed(2)}>
      {order.map((group) => {
        const rows = catalogue.flatMap((definition) => {
          const reading = byId.get(definition.id);
          return definition.group === group && reading ? [{ definition, reading }] : [];
        });
        if (rows.length === 0) return null;
        return <Group key={group} group={group} rows={rows} swimmer={swimmer} />;
      })}
      <p className="readings-foot">
        ± is the 95 % interval. Gap: leg minus arm, positive when the leg is later.
      </p>
    </aside>
  );
}

interface GroupProps {
  readonly group: ReadingGroup;
  readonly rows: readonly { readonly definition: ReadingDefinition; readonly reading: Reading }[];
  readonly swimmer: Parameters<typeof ReadingRow>[0]['swimmer'];
}

/** Our default: fewer landmarks than this make no profile. */
const leastDrawn = 3;

const isUndulation = (row: GroupProps['rows'][number]): boolean =>
  row.definition.id.startsWith('undulation-');

function Group({ group, rows, swimmer }: GroupProps) {
  const [showMissing, setShowMissing] = useState(false);
  const [showParts, setShowParts] = useState(false);
  const computed = rows.filter((row) => row.reading.status === 'computed');
  const missing = rows.filter((row) => row.reading.status === 'missing');
  // a group with nothing yet shows its first need, so that the way on is seen
  const ahead = computed.length === 0 ? missing.slice(0, 1) : [];
  const rest = missing.slice(ahead.length);
  // nine undulations are one drawing; the toes, which coaches speak of, stay in words
  const drawn = group === 'body-wave' && computed.filter(isUndulation).length >= leastDrawn;
  const folded = drawn
    ? computed.filter((row) => isUndulation(row) && row.definition.id !== 'undulation-toe')
    : [];
  const open = showParts ? computed : computed.filter((row) => !folded.includes(row));
  return (
    <section aria-labelledby={`group-${group}`}>
      <h2 id={`group-${group}`}>{groupWords[group]}</h2>
      {drawn && <WaveProfile rows={computed.filter(isUndulation)} />}
      <ul>
        {[...open, ...ahead, ...(showMissing ? rest : [])].map(({ definition, reading }) => (
          <ReadingRow key={definition.id} definition={definition} reading={reading} swimmer={swimmer} />
        ))}
      </ul>
      {folded.length > 0 && (
        <button
          type="button"
          className="missing-toggle"
          aria-expanded={showParts}
          onClick={() => setShowParts(!showParts)}
        >
          {showParts ? 'Fold the other landmarks' : `${folded.length} more landmarks in numbers`}
        </button>
      )}
      {rest.length > 0 && (
        <button
          type="button"
          className="missing-toggle"
          aria-expanded={showMissing}
          onClick={() => setShowMissing(!showMissing)}
        >
          {showMissing
            ? 'Hide what is missing'
            : `${rest.length} more, with what ${rest.length === 1 ? 'it needs' : 'they need'}`}
        </button>
      )}
    </section>
  );
}
