import type { Practice, PracticeItem } from '#core/practice/practice-schema';
import type { PlannedRepeat } from '#core/practice/unfold-item';
import type { efforts } from '#core/swim-file/swim-schema';
import type { KeptDocument } from '../documents/kept-document';
import { makeId } from '../host/make-id';
import { entryOf, logRepeat, type RepeatKey } from './practice-steps';
import type { Stopwatches } from './stopwatches';
import { setsWords } from '#core/words/sets';

/** One repeat of one swimmer, as it is logged. */
export interface DeckRepeat {
  readonly rowKey: RepeatKey;
  readonly name: string;
  readonly item: PracticeItem;
  readonly planned: PlannedRepeat;
  readonly document: KeptDocument<Practice>;
  readonly watches: Stopwatches;
}

/** What a tap or a key logs of a repeat; the buttons of a row and the keys of the deck both call these. */
export interface DeckLog {
  say(said: Parameters<typeof logRepeat>[1], what: string): void;
  more(): void;
  fewer(): void;
  /** Starts the swimmer's watch, or stops it and keeps its time. */
  watch(): void;
  /** Said again it is taken back. */
  effort(effort: (typeof efforts)[number]): void;
}

export function logOnDeck({ rowKey, name, item, planned, document, watches }: DeckRepeat): DeckLog {
  const who = rowKey.swimmerId ?? '';
  const entry = () => entryOf(document.current(), rowKey);
  const say: DeckLog['say'] = (said, what) => void document.run(logRepeat(rowKey, said, what, makeId));
  // the first tap begins where this swimmer is likely to be: the planned count, or the one before
  const likely = (): number | null =>
    planned.count ??
    document
      .current()
      .log.findLast(
        (each) => each.swimmerId === rowKey.swimmerId && each.itemId === item.id && each.count !== null,
      )?.count ??
    null;
  const setCount = (next: number): void =>
    say({ count: Math.min(2000, Math.max(0, next)) }, setsWords('logSCount', { name }));
  return {
    say,
    more() {
      const count = entry()?.count ?? null;
      setCount(count === null ? Math.max(1, likely() ?? 1) : count + 1);
    },
    fewer() {
      const count = entry()?.count ?? null;
      setCount(count === null ? (likely() ?? 0) : count - 1);
    },
    watch() {
      if (watches.read(who) === null) return watches.start(who);
      const seconds = watches.stop(who);
      if (seconds !== null && seconds > 0) say({ timeSeconds: seconds }, setsWords('logSTime', { name }));
    },
    effort(effort) {
      say({ effort: entry()?.effort === effort ? null : effort }, setsWords('logSEffort', { name }));
    },
  };
}
