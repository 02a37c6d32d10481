import { useEffect, useState } from 'react';
import { useStore } from 'zustand';
import type { SwimSummary } from '#core/host-contract/operations/library-operations';
import { clockWords, secondsOf } from '#core/practice/clock-words';
import type { CountHeld } from '#core/practice/count-held';
import type { Practice } from '#core/practice/practice-schema';
import { efforts } from '#core/swim-file/swim-schema';
import { KeptField, KeptNumber, KeptText } from '../ui/kept-field';
import { addressOf } from '../ui/use-route';
import { dayWords, swumWords } from '#core/swim-file/card-words';
import { type DeckRepeat, logOnDeck } from './log-on-deck';
import { entryOf } from './practice-steps';
import type { Stopwatches } from './stopwatches';
import { setsWords } from '#core/words/sets';
import { rich } from '../ui/rich';

interface Props {
  readonly of: DeckRepeat;
  /** The keys speak to this row. */
  readonly current: boolean;
  readonly practice: Practice;
  readonly held: ReadonlyMap<string, CountHeld>;
  readonly swims: readonly SwimSummary[];
}

/** One repeat of one swimmer: count, time, effort, note, film. */
export function DeckRow({ of, current, practice, held, swims }: Props) {
  const { rowKey, name, item, watches } = of;
  const entry = entryOf(practice, rowKey);
  const log = logOnDeck(of);
  const count = entry?.count ?? null;
  const verdict = entry ? held.get(entry.id) : undefined;
  return (
    <section className={current ? 'deck-row current' : 'deck-row'} aria-label={name}>
      <h2>
        {name}
        {verdict && (
          <small data-held={verdict.verdict}>
            {verdict.verdict === 'held'
              ? setsWords('heldCountSlow', { slowCount: verdict.slowCount })
              : setsWords('lostCountSlow', { slowCount: verdict.slowCount })}
          </small>
        )}
      </h2>
      <div className="deck-count">
        <button type="button" aria-label={setsWords('oneStrokeFewerName', { name })} onClick={log.fewer}>
          −
        </button>
        <KeptNumber
          least={0}
          most={2000}
          whole
          mayBeEmpty
          aria-label={setsWords('strokes', { name })}
          placeholder={setsWords('strokes2')}
          value={count}
          onKeep={(next) => log.say({ count: next }, setsWords('logSCount', { name }))}
        />
        <button type="button" aria-label={setsWords('oneStrokeMoreName', { name })} onClick={log.more}>
          +
        </button>
      </div>
      <div className="deck-time">
        <Watch who={rowKey.swimmerId ?? ''} name={name} watches={watches} onPress={log.watch} />
        <KeptField
          inputMode="decimal"
          autoComplete="off"
          aria-label={setsWords('time', { name })}
          placeholder={setsWords('timeForm')}
          value={entry?.timeSeconds ?? null}
          textOf={(seconds) => {
            if (seconds === null) return '';
            // a watch is read to the tenth, the round one too
            return Number.isInteger(seconds) ? `${clockWords(seconds)}.0` : clockWords(seconds);
          }}
          readOf={(text) => {
            if (text.trim() === '') return null;
            const seconds = secondsOf(text);
            return seconds !== null && seconds <= 21_600 ? seconds : undefined;
          }}
          onKeep={(seconds) => log.say({ timeSeconds: seconds }, setsWords('logSTime', { name }))}
        />
      </div>
      {/* biome-ignore lint/a11y/useSemanticElements: a fieldset's legend would take a line of its own on deck */}
      <div className="deck-effort" role="group" aria-label={setsWords('effortName', { name })}>
        {efforts.map((effort) => (
          <button
            key={effort}
            type="button"
            aria-pressed={entry?.effort === effort}
            data-planned={entry?.effort == null && item.effort === effort ? '' : undefined}
            onClick={() => log.effort(effort)}
          >
            {effort}
          </button>
        ))}
      </div>
      <KeptText
        className="deck-note"
        aria-label={setsWords('note', { name })}
        placeholder={setsWords('note2')}
        maxLength={1000}
        value={entry?.note ?? ''}
        onKeep={(note) => log.say({ note }, setsWords('noteName', { name }))}
      />
      <FilmChoice
        name={name}
        swimmerId={rowKey.swimmerId}
        day={practice.date}
        swims={swims}
        swimId={entry?.swimId ?? null}
        onChoose={(swimId) => log.say({ swimId }, setsWords('tieFilmSRepeat', { name }))}
      />
    </section>
  );
}

interface WatchProps {
  readonly who: string;
  readonly name: string;
  readonly watches: Stopwatches;
  readonly onPress: () => void;
}

function Watch({ who, name, watches, onPress }: WatchProps) {
  const running = useStore(watches.store, ({ started }) => started.has(who));
  const [, tick] = useState(0);
  useEffect(() => {
    if (!running) return;
    const timer = window.setInterval(() => tick((each) => each + 1), 100);
    return () => window.clearInterval(timer);
  }, [running]);
  const seconds = watches.read(who);
  return (
    <button
      type="button"
      className={running ? 'watch running' : 'watch'}
      aria-label={running ? setsWords('stopWatch', { name }) : setsWords('startWatch', { name })}
      onClick={onPress}
    >
      {running && seconds !== null ? setsWords('stop', { clock: clockWords(seconds) }) : setsWords('start')}
    </button>
  );
}

interface FilmProps {
  readonly name: string;
  readonly swimmerId: string | null;
  readonly day: string;
  readonly swims: readonly SwimSummary[];
  readonly swimId: string | null;
  readonly onChoose: (swimId: string | null) => void;
}

/** Ties a swim of the shelf to the repeat: those of that swimmer, that day's first. */
function FilmChoice({ name, swimmerId, day, swims, swimId, onChoose }: FilmProps) {
  const offered = swims
    .filter(({ id, card }) => id === swimId || swimmerId === null || card.swimmerId === swimmerId)
    .sort(
      ({ card: a }, { card: b }) =>
        Number(b.date === day) - Number(a.date === day) || b.date.localeCompare(a.date),
    );
  const known = swims.some(({ id }) => id === swimId);
  return (
    <div className="deck-film">
      <select
        aria-label={setsWords('filmSRepeat', { name })}
        value={swimId ?? ''}
        onChange={(event) => onChoose(event.target.value || null)}
      >
        <option value="">{setsWords('noFilm')}</option>
        {swimId !== null && !known && <option value={swimId}>{setsWords('swimGone')}</option>}
        {offered.map(({ id, card }) => (
          <option key={id} value={id}>
            {dayWords(card.date)}: {swumWords(card).what}
          </option>
        ))}
      </select>
      {swimId !== null && known && (
        <a className="button-like" href={addressOf({ screen: 'bench', ids: [swimId] })}>
          {rich(
            setsWords.parts('benchFilm', {
              name,
              span: (inside) => <span className="unseen">{inside}</span>,
            }),
          )}
        </a>
      )}
    </div>
  );
}
