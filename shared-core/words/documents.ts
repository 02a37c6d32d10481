import { words } from './words';

/** Saving and opening of documents. */
export const documentsWords = words({
  tryAgain: 'Try again',
  saved: 'Saved {at}',
  saved2: 'Saved',
  saving: 'Saving…',
  notSaved: 'Not saved. {what} {todo}',
  leaveWindowOpen: 'Leave this window open until it works: it holds the only copy.',
  changedElsewhereMeanwhile:
    'This {what} was changed elsewhere meanwhile. Both versions are kept beside each other: go on with',
  one: 'this one',
  other: 'the other',
  undo: 'Undo',
  changesLastTime: 'Changes of last time that had not been saved are back',
});
