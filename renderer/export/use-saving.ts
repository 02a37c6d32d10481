import { useCallback, useRef, useState } from 'react';
import { errorWords } from '#core/host-contract/error-words';
import type { Result } from '#core/host-contract/host-error';
import { beginWork } from '../ui/work-in-hand';
import type { HostClient } from '../host/host-client';
import { type ExportJob, PictureTooLarge } from './make-exports';
import type { SavedFile } from './saved-list';
import { exportWords } from '#core/words/export';

type Saving =
  | { readonly kind: 'ready' }
  | { readonly kind: 'saving'; readonly done: number; readonly count: number; readonly words: string }
  | { readonly kind: 'ended'; readonly trouble: string | null };

/** A file that the host makes by itself; its progress is told in words. */
export interface HostJob {
  readonly name: string;
  run(signal: AbortSignal, say: (words: string) => void): Promise<Result<{ name: string; path: string }>>;
}

export interface Saver {
  readonly saving: Saving;
  readonly files: readonly SavedFile[];
  /** Makes and saves one file after the other; those done stay when a later one fails or is cancelled. */
  save(jobs: readonly ExportJob[], hostJobs?: readonly HostJob[]): Promise<void>;
  cancel(): void;
  /** Something was chosen anew: what was said of the last saving is put away. */
  reset(): void;
}

export function useSaving(host: Pick<HostClient, 'sendExport'>): Saver {
  const [saving, setSaving] = useState<Saving>({ kind: 'ready' });
  const [files, setFiles] = useState<readonly SavedFile[]>([]);
  const stop = useRef<AbortController | null>(null);

  const save = useCallback(
    async (jobs: readonly ExportJob[], hostJobs: readonly HostJob[] = []): Promise<void> => {
      const own = new AbortController();
      stop.current = own;
      const count = jobs.length + hostJobs.length;
      let done = 0;
      setFiles([]);
      const work = beginWork();
      const say = (words: string): void => {
        setSaving({ kind: 'saving', done, count, words });
        work.tell(done / count);
      };
      const one = (result: Result<{ name: string; path: string }>): string | null => {
        if (!result.ok) {
          const { what, todo } = errorWords(result.error);
          return result.error.code === 'cancelled' ? exportWords('cancelled') : `${what} ${todo}`;
        }
        done += 1;
        const saved = result.value;
        setFiles((before) => [...before, saved]);
        return null;
      };
      let trouble: string | null = null;
      try {
        for (const job of jobs) {
          say(job.name);
          const blob = await job.make(own.signal);
          own.signal.throwIfAborted();
          trouble = one(await host.sendExport(job.name, blob));
          if (trouble !== null) break;
        }
        for (const job of trouble === null ? hostJobs : []) {
          say(job.name);
          trouble = one(await job.run(own.signal, say));
          if (trouble !== null) break;
        }
      } catch (problem) {
        if (own.signal.aborted) trouble = exportWords('cancelled');
        else if (problem instanceof PictureTooLarge)
          trouble = exportWords('tooLargeSaved', { message: problem.message });
        else if (problem instanceof Error)
          trouble = exportWords('pictureCouldNot', { message: problem.message });
        else throw problem;
      } finally {
        work.end();
      }
      setSaving({
        kind: 'ended',
        trouble: trouble === null ? null : exportWords('filesSaved', { trouble, done, count }),
      });
    },
    [host],
  );
  return {
    saving,
    files,
    save,
    cancel: useCallback(() => stop.current?.abort(), []),
    reset: useCallback(() => setSaving({ kind: 'ready' }), []),
  };
}
