/** A document that is open on this page and saves by itself. */
interface Saving {
  flush(): Promise<void>;
  leave(): void;
}

const open = new Set<Saving>();

/** Counts a document in until the answer is called: it is saved when the page goes. */
export function savedOnLeaving(saving: Saving): () => void {
  open.add(saving);
  return () => void open.delete(saving);
}

/** Saves all open documents now; resolves when their writes have ended, well or badly. */
export async function saveAll(): Promise<void> {
  const all = [...open];
  leaveAll();
  await Promise.allSettled(all.map((each) => each.flush()));
}

/** Keeps what is unsaved in the window's storage at once and starts to write it: nobody waits for a page that goes. */
export function leaveAll(): void {
  for (const each of open) each.leave();
}

/** Saves whenever the page may be about to go: it is closed, left, or no longer seen. */
export function saveBeforeLeaving(page: Pick<Window, 'addEventListener'>, document: Document): void {
  page.addEventListener('pagehide', leaveAll);
  document.addEventListener('visibilitychange', () => {
    if (document.visibilityState === 'hidden') leaveAll();
  });
}
