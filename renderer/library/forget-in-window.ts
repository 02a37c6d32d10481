import type { Swimmer } from '#core/swim-file/squad-schema';

type Kept = Pick<Storage, 'length' | 'key' | 'getItem' | 'removeItem'>;

/** Removes what this window itself remembers of an erased swimmer: changes not yet on disk, the last card's name. */
export function forgetInWindow(
  storage: Kept,
  {
    swimmer,
    swimIds,
  }: { readonly swimmer: Pick<Swimmer, 'id' | 'name'>; readonly swimIds: readonly string[] },
): number {
  const name = swimmer.name.toLocaleLowerCase();
  // a whole id, not the beginning of another; ids hold no sign that means something to a pattern
  const swims = swimIds.map((id) => new RegExp(`(?<![A-Za-z0-9_-])${id}(?![A-Za-z0-9_-])`));
  const keys = Array.from({ length: storage.length }, (_, at) => storage.key(at)).filter(
    (key) => key !== null,
  );
  const theirs = keys.filter((key) => {
    const text = `${key} ${storage.getItem(key) ?? ''}`;
    return (
      text.includes(`"${swimmer.id}"`) ||
      text.toLocaleLowerCase().includes(`"${name}"`) ||
      swims.some((swim) => swim.test(text))
    );
  });
  for (const key of theirs) storage.removeItem(key);
  return theirs.length;
}
