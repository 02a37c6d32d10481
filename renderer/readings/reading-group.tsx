import { useState } from 'react';
import type { ArrangedGroup, ReadingRowData } from './arrange-readings';
import { groupWords } from './group-words';
import { HarmonicRows } from './harmonic-rows';
import { ReadingRow } from './reading-row';
import { hasProfile, WaveProfile } from './wave-profile';
import { readingsWords } from '#core/words/readings';

interface GroupProps {
  readonly arranged: ArrangedGroup;
  readonly swimmer: Parameters<typeof ReadingRow>[0]['swimmer'];
}

/** One group of the catalogue; what can't be had yet is folded, with the reason. */
export function ReadingGroupSection({ arranged, swimmer }: GroupProps) {
  const { group, first, more, harmonics, missing } = arranged;
  const [showMore, setShowMore] = useState(false);
  const [showMissing, setShowMissing] = useState(false);
  const all = [...first, ...more];
  const list = (rows: readonly ReadingRowData[]) =>
    rows.map((row) => <ReadingRow key={row.definition.id} {...row} swimmer={swimmer} />);
  return (
    <section aria-labelledby={`group-${group}`}>
      <h2 id={`group-${group}`}>{groupWords[group]}</h2>
      {hasProfile(all) && <WaveProfile rows={all} />}
      <ul>
        {list(first)}
        {showMore && list(more)}
        {showMissing && list(missing)}
      </ul>
      {harmonics.length > 0 && <HarmonicRows rows={harmonics} list={list} />}
      <div className="group-toggles">
        {more.length > 0 && (
          <button type="button" aria-expanded={showMore} onClick={() => setShowMore(!showMore)}>
            {showMore ? readingsWords('fewer') : readingsWords('more', { more: more.length })}
          </button>
        )}
        {missing.length > 0 && (
          <button type="button" aria-expanded={showMissing} onClick={() => setShowMissing(!showMissing)}>
            {showMissing
              ? readingsWords('hideWhatMissing')
              : readingsWords('notYet', { count: missing.length })}
          </button>
        )}
      </div>
    </section>
  );
}
