import { useCallback, useMemo, useState } from 'react';
import type { HostError } from '#core/host-contract/host-error';
import { coachMarkingError } from '#core/uncertainty/coach-marking-error';
import { type RemarkingAnswer, remarkingEntries } from '#core/uncertainty/remarking-entries';
import { type RemarkingItem, type RemarkingChoice, remarkingPlan } from '#core/uncertainty/remarking-plan';
import { type OpenSwim, clockOf } from '../open-swim/open-swim';
import { createRemarkingJournal, type RemarkingPass } from './remarking-journal';
import { writeRemarkings } from './write-remarkings';
import { remarkingWords } from '#core/words/remarking';

type RemarkingPhase = 'start' | 'going' | 'saving' | 'results';

export interface Remarking {
  readonly phase: RemarkingPhase;
  /** A pass left on another day. */
  readonly left: RemarkingPass | null;
  readonly item: RemarkingItem | null;
  readonly done: number;
  readonly all: number;
  readonly trouble: HostError | null;
  /** Pairs that this pass has added to the coach's file. */
  readonly added: number;
  begin(choice: Omit<RemarkingChoice, 'seed'>): void;
  goOn(): void;
  throwAway(): void;
  answer(answer: RemarkingAnswer): void;
  skip(): void;
  back(): void;
  /** Keeps the pairs made so far in the coach's file and what is left for another day. */
  stop(): void;
  showResults(): void;
}

/** Whether the first mark is still what it was when the item was drawn. */
function stillTrue(session: OpenSwim, item: RemarkingItem): boolean {
  const swim = session.document.swim();
  if (item.of === 'event')
    return swim.events.some(({ id, frame }) => id === item.eventId && frame === item.frame);
  if (item.of === 'followed') return swim.followed.length > 0;
  const posture = swim.postures.find(({ frame }) => frame === item.frame);
  return item.points.every(
    ({ landmark, x, y }) => posture?.points[landmark]?.x === x && posture.points[landmark].y === y,
  );
}

/** A seed for one pass, made here at the border. */
const freshSeed = (): number => crypto.getRandomValues(new Uint32Array(1))[0] ?? 0;

/** One blind pass from its start to its results; every answer is kept in the window at once. */
export function useRemarking(session: OpenSwim): Remarking {
  const swim = session.document.swim();
  const journal = useMemo(() => createRemarkingJournal(window.localStorage), []);
  const [left, setLeft] = useState(() => journal.read(swim.id));
  const [phase, setPhase] = useState<RemarkingPhase>('start');
  const [pass, setPass] = useState<RemarkingPass>({ swimId: swim.id, items: [], answers: [] });
  const [trouble, setTrouble] = useState<HostError | null>(null);
  const [added, setAdded] = useState(0);

  const save = useCallback(
    async (ended: RemarkingPass): Promise<void> => {
      setPhase('saving');
      setTrouble(null);
      const clock = clockOf(swim);
      const entries = ended.answers.flatMap((given, i) => {
        const item = ended.items[i];
        return given && item ? remarkingEntries(item, given.answer, swim, clock, given.on) : [];
      });
      const written = await writeRemarkings(session.host, entries);
      if (!written.ok) {
        // nothing is lost: the answers stay in the window until they could be kept
        setTrouble(written.error);
        setLeft(ended);
        setPhase('start');
        return;
      }
      const rest = { swimId: swim.id, items: ended.items.slice(ended.answers.length), answers: [] };
      if (rest.items.length > 0) journal.keep(rest);
      else journal.forget(swim.id);
      setLeft(rest.items.length > 0 ? rest : null);
      setAdded(entries.length);
      const coach = written.value;
      session.known.setState({ coach, markingError: coachMarkingError(coach, swim.clip.height) });
      setPhase('results');
    },
    [journal, session, swim],
  );

  const take = useCallback(
    (next: RemarkingPass): void => {
      setPass(next);
      if (!journal.keep(next)) session.say(remarkingWords('windowCantKeep'));
      if (next.answers.length >= next.items.length) void save(next);
    },
    [journal, session, save],
  );

  return {
    phase,
    left,
    item: pass.items[pass.answers.length] ?? null,
    done: pass.answers.length,
    all: pass.items.length,
    trouble,
    added,
    begin(choice) {
      const items = remarkingPlan(swim, clockOf(swim), { ...choice, seed: freshSeed() });
      if (items.length === 0) return;
      setPhase('going');
      take({ swimId: swim.id, items, answers: [] });
    },
    goOn() {
      if (!left) return;
      const keeps = left.items.map((item, i) => left.answers[i] !== undefined || stillTrue(session, item));
      setPhase('going');
      take({ ...left, items: left.items.filter((_, i) => keeps[i]) });
    },
    throwAway() {
      journal.forget(swim.id);
      setLeft(null);
    },
    answer: (answer) =>
      take({ ...pass, answers: [...pass.answers, { answer, on: new Date().toISOString() }] }),
    skip: () => take({ ...pass, answers: [...pass.answers, null] }),
    back() {
      if (pass.answers.length > 0) take({ ...pass, answers: pass.answers.slice(0, -1) });
    },
    stop: () => void save(pass),
    showResults: () => setPhase('results'),
  };
}
