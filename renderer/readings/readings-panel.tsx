import { useMemo, useState } from 'react';
import { useStore } from 'zustand';
import type { ReadingDefinition } from '#core/measures/reading';
import { useOpenSwim, useView } from '../open-swim/open-swim';
import { type ArrangedGroup, arrangeReadings, type ReadingRowData } from './arrange-readings';
import { groupWords } from './group-words';
import { HarmonicRows } from './harmonic-rows';
import { IntervalSwitch } from './interval-switch';
import { MarkingNotice } from './marking-notice';
import { ReadingRow } from './reading-row';
import { SlowdownNotice } from './slowdown-notice';
import { CameraNotice } from '../camera/camera-notice';
import { TravelNotice } from './travel-notice';
import { ViewNotice } from './view-notice';
import { hasProfile, WaveProfile } from './wave-profile';
import './readings.css';
import { readingsWords } from '#core/words/readings';

interface PanelProps {
  readonly catalogue: readonly ReadingDefinition[];
  readonly onAskSlowdown: () => void;
  readonly onRemark: () => void;
}

/** All readings of the swim by group; what can't be had is folded under each group, with the reason. */
export function ReadingsPanel({ catalogue, onAskSlowdown, onRemark }: PanelProps) {
  const session = useOpenSwim();
  const readings = useStore(session.readings.store, (state) => state.readings);
  const tookMs = useStore(session.readings.store, (state) => state.tookMs);
  const behind = useStore(session.readings.store, (state) => state.behind);
  const swimmer = useStore(session.known, (state) => state.swimmer);
  const lit = useView((state) => state.litReading);
  const groups = useMemo(() => {
    const first = new Set(swimmer?.targets.map((target) => target.reading) ?? []);
    if (lit) first.add(lit);
    return arrangeReadings(catalogue, readings, first);
  }, [catalogue, readings, swimmer, lit]);
  return (
    <aside
      className="readings"
      aria-label={readingsWords('readings')}
      aria-busy={behind}
      data-took-ms={tookMs.toFixed(2)}
    >
      <p className="readings-behind">
        <span>
          {readings.length === 0 ? readingsWords('readingMarks') : readingsWords('marksMovedReading')}
        </span>
      </p>
      <SlowdownNotice onAsk={onAskSlowdown} />
      <TravelNotice />
      <ViewNotice />
      <CameraNotice />
      <IntervalSwitch />
      {groups.map((each) => (
        <Group key={each.group} arranged={each} swimmer={swimmer} />
      ))}
      <MarkingNotice onRemark={onRemark} />
    </aside>
  );
}

interface GroupProps {
  readonly arranged: ArrangedGroup;
  readonly swimmer: Parameters<typeof ReadingRow>[0]['swimmer'];
}

function Group({ arranged, swimmer }: GroupProps) {
  const { group, first, more, harmonics, missing } = arranged;
  const [showMore, setShowMore] = useState(false);
  const [showMissing, setShowMissing] = useState(false);
  // a group with nothing yet shows its first need, so that the way on is seen
  const ahead = first.length === 0 ? missing.slice(0, 1) : [];
  const rest = missing.slice(ahead.length);
  const all = [...first, ...more];
  const list = (rows: readonly ReadingRowData[]) =>
    rows.map((row) => (
      <ReadingRow
        key={row.definition.id}
        definition={row.definition}
        reading={row.reading}
        share={row.share}
        swimmer={swimmer}
      />
    ));
  return (
    <section aria-labelledby={`group-${group}`}>
      <h2 id={`group-${group}`}>{groupWords[group]}</h2>
      {hasProfile(all) && <WaveProfile rows={all} />}
      <ul>
        {list([...first, ...ahead])}
        {showMore && list(more)}
        {showMissing && list(rest)}
      </ul>
      {harmonics.length > 0 && <HarmonicRows rows={harmonics} list={list} />}
      <div className="group-toggles">
        {more.length > 0 && (
          <button type="button" aria-expanded={showMore} onClick={() => setShowMore(!showMore)}>
            {showMore ? readingsWords('fewer') : readingsWords('more', { more: more.length })}
          </button>
        )}
        {rest.length > 0 && (
          <button type="button" aria-expanded={showMissing} onClick={() => setShowMissing(!showMissing)}>
            {showMissing
              ? readingsWords('hideWhatMissing')
              : readingsWords('notYetWhatThey', { rest: rest.length })}
          </button>
        )}
      </div>
    </section>
  );
}
