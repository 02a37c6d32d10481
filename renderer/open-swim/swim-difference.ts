import type { Swim } from '#core/swim-file/swim-schema';

/** A list with a stretch of it exchanged: `start` items stay at the front, `end` at the back. */
export interface ListChange<T> {
  readonly start: number;
  readonly end: number;
  readonly between: readonly T[];
}

const lists = ['events', 'postures', 'followed'] as const satisfies readonly (keyof Swim)[];
type ListName = (typeof lists)[number];
type Rest = Partial<Omit<Swim, ListName>>;

/** What of a swim is another object than before, so that a moved mark costs its own sending only. */
export interface SwimDifference {
  readonly rest: Rest;
  readonly events: ListChange<Swim['events'][number]> | null;
  readonly postures: ListChange<Swim['postures'][number]> | null;
  readonly followed: ListChange<Swim['followed'][number]> | null;
}

/** What is exchanged of a list, by the identity of its items; null where it is the very same list. */
export function listChange<T>(before: readonly T[], now: readonly T[]): ListChange<T> | null {
  if (before === now) return null;
  const most = Math.min(before.length, now.length);
  let start = 0;
  while (start < most && before[start] === now[start]) start += 1;
  let end = 0;
  while (end < most - start && before[before.length - 1 - end] === now[now.length - 1 - end]) end += 1;
  return { start, end, between: now.slice(start, now.length - end) };
}

/** The list after a change; items that stayed are the same objects as before. */
export function changedList<T>(before: readonly T[], change: ListChange<T> | null): readonly T[] {
  if (!change) return before;
  const { start, end, between } = change;
  return [...before.slice(0, start), ...between, ...before.slice(before.length - end)];
}

const nothing: Pick<Swim, ListName> = { events: [], postures: [], followed: [] };

/** What has to be told of a swim to someone who knows it as it was before (null: not at all). */
export function swimChange(before: Swim | null, now: Swim): SwimDifference {
  const known = before ?? nothing;
  const { events, postures, followed, ...others } = now;
  const rest = Object.fromEntries(
    Object.entries(others).filter(([key, value]) => before?.[key as keyof Rest] !== value),
  );
  return {
    rest,
    events: listChange(known.events, events),
    postures: listChange(known.postures, postures),
    followed: listChange(known.followed, followed),
  };
}

/** The swim as it is after a change. What did not change keeps its identity, so that what hangs on it can be kept. */
export function changedSwim(before: Swim | null, change: SwimDifference): Swim {
  const known = before ?? nothing;
  return {
    ...known,
    ...change.rest,
    events: changedList(known.events, change.events),
    postures: changedList(known.postures, change.postures),
    followed: changedList(known.followed, change.followed),
  } as Swim;
}
