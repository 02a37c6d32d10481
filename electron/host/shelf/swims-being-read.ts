import { failure, type Result } from '#core/host-contract/host-error';
import type { SwimSummary } from '#core/host-contract/operations/library-operations';
import { readInThreads } from './read-in-threads';
import type { Indexed } from './shelf-index';
import type { SwimFolders } from './swim-folders';

/** Fewer swims than this are read before a thread would have started. Our default. */
const worthThreads = 40;

interface Waiting {
  readonly answer: Promise<Result<Indexed>>;
  readonly resolve: (read: Result<Indexed>) => void;
  readonly reject: (error: unknown) => void;
}

/** Swims that the index doesn't know and that are being read now, each once, however many ask for it. */
export class SwimsBeingRead {
  private readonly waiting = new Map<string, Waiting>();
  private readonly glances = new Map<string, SwimSummary>();
  private stopper = new AbortController();
  private work: Promise<void> = Promise.resolve();

  constructor(
    private readonly folders: SwimFolders,
    private readonly library: string,
    /** Where the reading thread's program lies; null: everything is read here. */
    private readonly threadEntry: URL | null,
    private readonly onRead: (id: string, entry: Indexed) => Promise<void>,
  ) {}

  /** Card and film of a swim whose readings are still to come. */
  glanceOf(id: string): SwimSummary | undefined {
    return this.glances.get(id);
  }

  /** Reads the swims, and gives the answer of each as it comes. */
  read(ids: readonly string[]): Promise<Result<Indexed>>[] {
    const fresh = ids.filter((id) => !this.waiting.has(id));
    for (const id of fresh) this.waiting.set(id, waiting());
    const answers = ids.map((id) => (this.waiting.get(id) as Waiting).answer);
    if (fresh.length > 0) this.work = this.work.then(() => this.readAll(fresh));
    return answers;
  }

  private async readAll(ids: readonly string[]): Promise<void> {
    if (this.threadEntry && ids.length >= worthThreads && !this.stopper.signal.aborted) {
      const listener = {
        onGlance: (id: string, summary: SwimSummary): void => void this.glances.set(id, summary),
        onWhole: (id: string, read: Result<Indexed>): void => void this.settle(id, async () => read),
      };
      try {
        await readInThreads(this.threadEntry, this.library, ids, listener, this.stopper.signal);
      } catch (error) {
        // threads can be refused or die for want of memory; what they left is read here, and a bug shows itself again
        console.warn('Reading the shelf goes on without threads:', error);
      }
    }
    for (const id of ids)
      if (this.waiting.has(id) && !this.stopper.signal.aborted)
        await this.settle(id, () => this.folders.whole(id));
  }

  private async settle(id: string, read: () => Promise<Result<Indexed>>): Promise<void> {
    const waits = this.waiting.get(id);
    if (!waits) return;
    try {
      const done = await read();
      if (done.ok) await this.onRead(id, done.value);
      waits.resolve(done);
    } catch (error) {
      waits.reject(error);
    }
    this.waiting.delete(id);
    this.glances.delete(id);
  }

  /** Stops reading and waits until nothing is at work; who still waits is told. What is asked for later is read again. */
  async close(): Promise<void> {
    this.stopper.abort();
    await this.work;
    for (const waits of this.waiting.values()) waits.resolve(failure('cancelled'));
    this.waiting.clear();
    this.glances.clear();
    this.stopper = new AbortController();
  }
}

function waiting(): Waiting {
  let resolve: Waiting['resolve'] = () => undefined;
  let reject: Waiting['reject'] = () => undefined;
  const answer = new Promise<Result<Indexed>>((yes, no) => {
    resolve = yes;
    reject = no;
  });
  // who asked may have gone on without waiting; who asks next reads again and is told
  answer.catch(() => undefined);
  return { answer, resolve, reject };
}
