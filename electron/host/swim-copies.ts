/**
 * Whether a file in a swim's folder is another version of its swim.json: kept by us when two windows saved different
 * versions (`swim.conflict-…`), or laid there by whatever keeps the folder alike on two computers, under a name of its
 * own. A damaged text that was set aside is none: it can't be opened.
 */
export function isSwimCopy(name: string): boolean {
  return (
    name !== 'swim.json' &&
    name.startsWith('swim') &&
    name.endsWith('.json') &&
    !name.startsWith('swim.damaged-')
  );
}
