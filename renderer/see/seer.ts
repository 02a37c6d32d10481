import type { SeenPicture } from '#core/see/cut-square';
import type { SeenFrame } from '#core/see/seen-runs';
import type { Square } from '#core/see/square';
import type { FromSeer, Glance, RunsOn, SeeFiles, ToSeer } from './see-message';

/** Sees a swimmer on pictures given in order, away from the window's own thread. One swim at a time. */
export interface Seer {
  /** Loads the networks where they are not, and begins a swim. Everything rejects with an Error when the worker is lost. */
  begin(chosen: Square | null): Promise<RunsOn>;
  look(frame: number, time: number, picture: SeenPicture): Promise<Glance>;
  lay(): Promise<readonly SeenFrame[]>;
  /** Ends the worker at once; the next swim starts another. */
  end(): void;
}

/** The part of a Worker that is used; tests hand in one that dies. */
export interface SeerWorker {
  onmessage: ((event: MessageEvent<FromSeer>) => void) | null;
  onerror: ((event: ErrorEvent) => void) | null;
  postMessage(message: ToSeer, transfer: Transferable[]): void;
  terminate(): void;
}

/** A worker that says nothing for this long is taken for dead, ms: laying a minute of film takes less, as does loading. */
const silenceMs = 120_000;

export function createSeer(
  makeWorker: () => SeerWorker,
  files: SeeFiles,
  { silence = silenceMs }: { readonly silence?: number } = {},
): Seer {
  let worker: SeerWorker | null = null;
  let runsOn: RunsOn | null = null;
  let waiting: {
    readonly hear: (message: FromSeer) => void;
    readonly fail: (problem: Error) => void;
  } | null = null;
  let ids = 0;

  const end = (why = 'it was ended'): void => {
    worker?.terminate();
    worker = null;
    runsOn = null;
    waiting?.fail(new Error(why));
    waiting = null;
  };

  /** Says one thing to the worker and waits for its answer. */
  const ask = (message: ToSeer, transfer: Transferable[] = []): Promise<FromSeer> =>
    new Promise((resolve, reject) => {
      const silent = setTimeout(() => end('it gave no sign of life'), silence);
      const settle = (done: () => void): void => {
        clearTimeout(silent);
        waiting = null;
        done();
      };
      waiting = {
        hear: (heard) => settle(() => resolve(heard)),
        fail: (problem) => settle(() => reject(problem)),
      };
      if (worker) worker.postMessage(message, transfer);
      else waiting.fail(new Error('it has ended'));
    });

  const start = async (): Promise<RunsOn> => {
    if (worker && runsOn) return runsOn;
    const made = makeWorker();
    worker = made;
    made.onmessage = ({ data }) => {
      if (data.kind === 'failed') end(data.reason);
      else waiting?.hear(data);
    };
    made.onerror = (event) => end(event.message || 'it could not start');
    const heard = await ask({ kind: 'open', files });
    if (heard.kind !== 'opened') throw new Error('it did not open');
    runsOn = heard.runsOn;
    return runsOn;
  };

  return {
    async begin(chosen) {
      const on = await start();
      ids += 1;
      await ask({ kind: 'begin', id: ids, chosen });
      return on;
    },
    async look(frame, time, picture) {
      const heard = await ask({ kind: 'look', id: ids, frame, time, picture }, [picture.rgba.buffer]);
      if (heard.kind !== 'looked') throw new Error('it answered something else');
      return heard.glance;
    },
    async lay() {
      const heard = await ask({ kind: 'lay', id: ids });
      if (heard.kind !== 'laid') throw new Error('it answered something else');
      return heard.frames;
    },
    end,
  };
}
