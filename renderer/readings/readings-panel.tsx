import { type ReactNode, useMemo, useRef, useState } from 'react';
import { useStore } from 'zustand';
import { findReadings } from '#core/measures/find-readings';
import type { ReadingDefinition } from '#core/measures/reading';
import { useOpenSwim, useView } from '../open-swim/open-swim';
import type { Command } from '../ui/command';
import { useCommandKeys } from '../ui/use-command-keys';
import { useKeyOf, useTip } from '../ui/use-tip';
import { arrangeReadings, rowsOf } from './arrange-readings';
import { IntervalSwitch } from './interval-switch';
import { MarkingNotice } from './marking-notice';
import { ReadingGroupSection } from './reading-group';
import { ReadingRow } from './reading-row';
import { ShortList } from './short-list';
import { SlowdownNotice } from './slowdown-notice';
import { CameraNotice } from '../camera/camera-notice';
import { TravelNotice } from './travel-notice';
import { ViewNotice } from './view-notice';
import './readings.css';
import { readingsWords } from '#core/words/readings';

interface PanelProps {
  readonly catalogue: readonly ReadingDefinition[];
  readonly onAskSlowdown: () => void;
  readonly onRemark: () => void;
  /** What to do next on this swim; stands under the short list. */
  readonly next: ReactNode;
}

/** Found readings shown at once: more than that is read in the catalogue. Our own choice. */
const foundAtMost = 24;

/** What matters first, large; a search over every reading; and the whole catalogue, a key away. */
export function ReadingsPanel({ catalogue, onAskSlowdown, onRemark, next }: PanelProps) {
  const session = useOpenSwim();
  const tip = useTip();
  const keyOf = useKeyOf();
  const readings = useStore(session.readings.store, (state) => state.readings);
  const tookMs = useStore(session.readings.store, (state) => state.tookMs);
  const behind = useStore(session.readings.store, (state) => state.behind);
  const swimmer = useStore(session.known, (state) => state.swimmer);
  const lit = useView((state) => state.litReading);
  const all = useView((state) => state.allReadings);
  const search = useRef<HTMLInputElement>(null);
  const [query, setQuery] = useState('');
  const rows = useMemo(() => rowsOf(catalogue, readings), [catalogue, readings]);
  const groups = useMemo(() => {
    if (!all) return [];
    const first = new Set(swimmer?.targets.map((target) => target.reading) ?? []);
    if (lit) first.add(lit);
    return arrangeReadings(catalogue, readings, first);
  }, [all, catalogue, readings, swimmer, lit]);
  const found = useMemo(() => {
    if (query.trim() === '') return null;
    const units = new Map(readings.map((each) => [each.id, each.status === 'computed' ? each.unit : '']));
    return findReadings(query, catalogue, (id) => units.get(id) ?? '').flatMap(
      ({ id }) => rows.get(id) ?? [],
    );
  }, [query, catalogue, readings, rows]);

  const { commands, showAll } = useMemo(() => {
    const toggle = (): void => session.view.setState({ allReadings: !session.view.getState().allReadings });
    const list: readonly Command[] = [
      {
        id: 'find-reading',
        label: readingsWords('find'),
        keys: ['/'],
        kind: 'view',
        run: () => search.current?.focus(),
      },
      {
        id: 'all-readings',
        label: readingsWords('allOrShort'),
        keys: ['Shift+R'],
        kind: 'view',
        run: toggle,
      },
    ];
    return { commands: list, showAll: toggle };
  }, [session]);
  useCommandKeys(readingsWords('readings'), commands);

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
      {next}
      <div className="find-reading">
        <input
          ref={search}
          type="search"
          placeholder={readingsWords('find')}
          aria-label={readingsWords('find')}
          title={tip('find-reading', readingsWords('findBy'))}
          value={query}
          onChange={(event) => setQuery(event.target.value)}
          onKeyDown={(event) => {
            if (event.key !== 'Escape') return;
            event.stopPropagation();
            setQuery('');
            event.currentTarget.blur();
          }}
        />
        <button
          type="button"
          aria-pressed={all}
          onClick={showAll}
          title={tip('all-readings', readingsWords('everyByGroup'))}
        >
          {readingsWords('all', { count: catalogue.length })} <kbd>{keyOf('all-readings')}</kbd>
        </button>
      </div>
      {found && (
        <section aria-label={readingsWords('found')}>
          <ul>
            {found.slice(0, foundAtMost).map((row) => (
              <ReadingRow key={row.definition.id} {...row} swimmer={swimmer} />
            ))}
          </ul>
          {found.length === 0 && <p className="find-none">{readingsWords('foundNone')}</p>}
          {found.length > foundAtMost && (
            <p className="find-none">{readingsWords('foundMore', { count: found.length - foundAtMost })}</p>
          )}
        </section>
      )}
      {!found && !all && <ShortList rows={rows} swimmer={swimmer} />}
      {!found &&
        groups.map((each) => <ReadingGroupSection key={each.group} arranged={each} swimmer={swimmer} />)}
      <IntervalSwitch />
      <MarkingNotice onRemark={onRemark} />
    </aside>
  );
}
