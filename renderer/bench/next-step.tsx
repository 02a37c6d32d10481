import { useMemo } from 'react';
import { useStore } from 'zustand';
import type { MissingReason, Reading, ReadingDefinition } from '#core/measures/reading';
import { reasonWords } from '#core/measures/reason-words';
import { questionsOf } from '../open-swim/follow-selectors';
import { startPass } from '../open-swim/guided-pass';
import { type OpenSwim, useOpenSwim, useSwim } from '../open-swim/open-swim';
import { lookAtNext, proposalsOf } from '../open-swim/proposals';
import { seeStoreOf } from '../open-swim/see-store';
import { useShortList } from '../readings/use-short-list';
import { placeFor } from '../readings/place-for';
import { cancelSeeing, seeSwimmer } from '../see/see-actions';
import { useKeyOf } from '../ui/use-tip';
import { benchWords } from '#core/words/bench';
import { readingsWords } from '#core/words/readings';
import './next-step.css';

interface Props {
  readonly catalogue: readonly ReadingDefinition[];
}

/** The one place that says what to do next: see or mark an empty swim, look at what waits, place what a reading needs. */
export function NextStep({ catalogue }: Props) {
  const session = useOpenSwim();
  const keyOf = useKeyOf();
  const running = useStore(seeStoreOf(session), (state) => state.running);
  const empty = useSwim((swim) => swim.postures.length + swim.seen.length + swim.events.length === 0);
  const waiting = useSwim((swim) => questionsOf(swim).length + proposalsOf(swim).length);
  if (running)
    return (
      <section className="next-step" aria-label={benchWords('next')}>
        <p>{benchWords('lookingShare', { share: Math.round(100 * running.share) })}</p>
        <progress max={1} value={running.share} aria-label={benchWords('lookingForSwimmer')} />
        <button type="button" onClick={() => cancelSeeing(session)}>
          {benchWords('cancel')} <kbd>{keyOf('see-cancel')}</kbd>
        </button>
      </section>
    );
  if (empty) return <EmptyStep />;
  if (waiting > 0)
    return (
      <section className="next-step" aria-label={benchWords('next')}>
        <p>{benchWords('suggestionsWait', { count: waiting })}</p>
        <button type="button" onClick={() => lookAtWaiting(session)}>
          {benchWords('lookAtThem')} <kbd>{keyOf('proposal-next')}</kbd>
        </button>
      </section>
    );
  return <MissingStep catalogue={catalogue} />;
}

/** Proposed moments stroke by stroke; without any, the points that are asked for. */
function lookAtWaiting(session: OpenSwim): void {
  if (proposalsOf(session.document.swim()).length > 0) lookAtNext(session);
  else session.follow.setState({ open: true });
}

function EmptyStep() {
  const session = useOpenSwim();
  const keyOf = useKeyOf();
  const kicking = useSwim((swim) => swim.card.stroke === 'dolphin-kick');
  return (
    <section className="next-step first" aria-label={benchWords('next')}>
      <p>{benchWords('nothingMarkedYet')}</p>
      <button type="button" className="primary" onClick={() => void seeSwimmer(session)}>
        {benchWords('seeTheSwimmer')} <kbd>{keyOf('see')}</kbd>
      </button>
      <button type="button" className="quiet" onClick={() => startPass(session)}>
        {benchWords(kicking ? 'orMarkKicks' : 'orMarkStroke')} <kbd>{keyOf('guided-pass')}</kbd>
      </button>
    </section>
  );
}

interface Wanted {
  readonly reason: MissingReason;
  readonly label: string;
  /** Other readings of the list that wait for the same. */
  readonly others: number;
}

function MissingStep({ catalogue }: Props) {
  const session = useOpenSwim();
  const list = useShortList();
  const readings = useStore(session.readings.store, (state) => state.readings);
  const wanted = useMemo(
    () => firstWanted(list, readings, catalogue, (reason) => placeFor(session, reason) !== null),
    [list, readings, catalogue, session],
  );
  if (!wanted) return null;
  const { reason, label, others } = wanted;
  return (
    <section className="next-step" aria-label={benchWords('next')}>
      <p>
        {reasonWords(reason)}
        <small>{benchWords('forReadings', { label, others })}</small>
      </p>
      <button
        type="button"
        className="place"
        aria-label={readingsWords('placeWhatNeeds', { label })}
        onClick={() => placeFor(session, reason)?.()}
      >
        {readingsWords(reason.code === 'marks-contradict' ? 'show' : 'place')}
      </button>
    </section>
  );
}

/** What the first missing reading of a list needs that can be placed here; null when nothing can or nothing is missing. */
function firstWanted(
  list: readonly string[],
  readings: readonly Reading[],
  catalogue: readonly ReadingDefinition[],
  canPlace: (reason: MissingReason) => boolean,
): Wanted | null {
  const byId = new Map(readings.map((each) => [each.id, each]));
  const needs = list.flatMap((id) => {
    const reading = byId.get(id);
    const reason = reading?.status === 'missing' ? reading.reasons[0] : undefined;
    return reason && canPlace(reason) ? [{ id, reason }] : [];
  });
  const [first] = needs;
  const label = catalogue.find(({ id }) => id === first?.id)?.label;
  if (!first || label === undefined) return null;
  const words = reasonWords(first.reason);
  return {
    reason: first.reason,
    label,
    others: needs.filter(({ reason }) => reasonWords(reason) === words).length - 1,
  };
}
