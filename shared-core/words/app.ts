import { words } from './words';

/** The frame around the screens. */
export const appWords = words({
  nothingHere: 'There is nothing at this address.',
  otherVersion: 'It may come from another version of Submark. Your swims are on the shelf.',
  toShelf: 'To the shelf',
});
