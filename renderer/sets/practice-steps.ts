import type { LogEntry, Practice, PracticeItem } from '#core/practice/practice-schema';
import { practiceItemSchema } from '#core/practice/practice-schema';
import type { Change } from '../documents/step-history';
import { setsWords } from '#core/words/sets';

/** One named step of a practice, as undo speaks of it. */
export interface PracticeStep {
  readonly name: string;
  readonly change: Change<Practice>;
}

type Facts = Partial<Pick<Practice, 'date' | 'title' | 'poolMetres' | 'swimmerIds' | 'pace' | 'note'>>;

export function setFacts(name: string, facts: Facts): PracticeStep {
  return { name, change: (draft) => void Object.assign(draft, structuredClone(facts)) };
}

/** Puts an item after another, or at the end. */
export function addItem(item: PracticeItem, afterId: string | null): PracticeStep {
  return {
    name: setsWords('addItem2'),
    change: (draft) => {
      const at = draft.items.findIndex(({ id }) => id === afterId);
      draft.items.splice(at < 0 ? draft.items.length : at + 1, 0, structuredClone(item));
    },
  };
}

/** Changes an item; one that the file could not hold is refused, and the answer says why. */
export function changeItem(
  item: PracticeItem,
  name: string,
): { readonly ok: true; readonly step: PracticeStep } | { readonly ok: false; readonly why: string } {
  const checked = practiceItemSchema.safeParse(item);
  if (!checked.success) return { ok: false, why: checked.error.issues[0]?.message ?? setsWords('notValid') };
  return {
    ok: true,
    step: {
      name,
      change: (draft) => {
        const at = draft.items.findIndex(({ id }) => id === item.id);
        if (at >= 0) draft.items[at] = structuredClone(checked.data);
      },
    },
  };
}

export function moveItem(id: string, by: -1 | 1): PracticeStep {
  return {
    name: setsWords('moveItem'),
    change: (draft) => {
      const from = draft.items.findIndex((each) => each.id === id);
      const to = from + by;
      const item = draft.items[from];
      if (!item || to < 0 || to >= draft.items.length) return;
      draft.items.splice(from, 1);
      draft.items.splice(to, 0, item);
    },
  };
}

/** Takes an item off the card. What was logged of it stays in the file, in no total. */
export function removeItem(id: string): PracticeStep {
  return {
    name: setsWords('removeItem'),
    change: (draft) => {
      draft.items = draft.items.filter((each) => each.id !== id);
    },
  };
}

/** The repeat that is logged. */
export interface RepeatKey {
  readonly itemId: string;
  readonly repeat: number;
  readonly swimmerId: string | null;
}

export function entryOf(practice: Practice, key: RepeatKey): LogEntry | null {
  return (
    practice.log.find(
      (each) => each.itemId === key.itemId && each.repeat === key.repeat && each.swimmerId === key.swimmerId,
    ) ?? null
  );
}

type Said = Partial<Pick<LogEntry, 'count' | 'timeSeconds' | 'effort' | 'note' | 'swimId'>>;

/** Logs something of a repeat; an entry of which nothing is left is taken out again. */
export function logRepeat(key: RepeatKey, said: Said, name: string, makeId: () => string): PracticeStep {
  const id = makeId();
  return {
    name,
    change: (draft) => {
      let entry = draft.log.find(
        (each) =>
          each.itemId === key.itemId && each.repeat === key.repeat && each.swimmerId === key.swimmerId,
      );
      if (!entry) {
        entry = { id, ...key, count: null, timeSeconds: null, effort: null, note: '', swimId: null };
        draft.log.push(entry);
        entry = draft.log.at(-1);
      }
      if (!entry) return;
      Object.assign(entry, said);
      const { count, timeSeconds, effort, note, swimId } = entry;
      const empty =
        count === null && timeSeconds === null && effort === null && note === '' && swimId === null;
      if (empty) draft.log = draft.log.filter((each) => each !== entry);
    },
  };
}
