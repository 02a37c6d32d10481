import type { SeenPicture } from '#core/see/cut-square';
import type { SeenFrame } from '#core/see/seen-runs';
import type { Square } from '#core/see/square';
import { type AskedWorker, askedWorker } from '../workers/ask-worker';
import type { PlainWorker, WorkerPatience } from '../workers/watched-worker';
import type { FromSeer, Glance, SeeFiles, ToSeer } from './see-message';
import type { RunsOn } from '../open-swim/see-store';
import { seeWords } from '#core/words/see';

/** Sees a swimmer on pictures given in order, away from the window's own thread. One swim at a time. */
export interface Seer {
  /** Loads the networks where they are not, and begins a swim. Everything rejects with an Error when the worker is lost. */
  begin(chosen: Square | null): Promise<RunsOn>;
  look(frame: number, time: number, picture: SeenPicture): Promise<Glance>;
  lay(): Promise<readonly SeenFrame[]>;
  /** Ends the worker at once; the next swim starts another. */
  end(): void;
}

export type SeerWorker = PlainWorker<ToSeer, FromSeer>;

/** Two minutes without a word: laying a minute of film takes less, as does loading. */
const seerPatience: WorkerPatience = { checkMs: 250, silentChecks: 480 };
const stopped = seeWords('seeingCancelled');

export function createSeer(makeWorker: () => SeerWorker, files: SeeFiles, patience = seerPatience): Seer {
  let worker: AskedWorker<ToSeer, FromSeer> | null = null;
  let runsOn: RunsOn | null = null;
  let ids = 0;

  const end = (): void => {
    worker?.end();
    worker = null;
    runsOn = null;
  };

  /** Asks one thing and waits for the answer of its kind; what fails ends the worker. */
  const ask = async <T>(
    message: ToSeer,
    pick: (told: FromSeer) => T | undefined,
    transfer: Transferable[] = [],
  ): Promise<T> => {
    if (!worker) throw new Error('the worker was ended');
    const hear = (told: FromSeer): T | undefined => {
      if (told.kind === 'failed') throw new Error(told.reason);
      return pick(told);
    };
    try {
      return await worker.ask({ message, transfer, stopped, hear });
    } catch (problem) {
      end();
      throw problem;
    }
  };

  return {
    async begin(chosen) {
      worker ??= askedWorker(makeWorker(), patience);
      runsOn ??= await ask({ kind: 'open', files }, (told) =>
        told.kind === 'opened' ? told.runsOn : undefined,
      );
      ids += 1;
      await ask({ kind: 'begin', id: ids, chosen }, (told) => told.kind === 'begun' || undefined);
      return runsOn;
    },
    look: (frame, time, picture) =>
      ask(
        { kind: 'look', id: ids, frame, time, picture },
        (told) => (told.kind === 'looked' ? told.glance : undefined),
        [picture.rgba.buffer],
      ),
    lay: () => ask({ kind: 'lay', id: ids }, (told) => (told.kind === 'laid' ? told.frames : undefined)),
    end,
  };
}
