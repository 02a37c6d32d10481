import { useCallback, useEffect, useRef, useState } from 'react';
import type { z } from 'zod';
import { failure, type HostError, type Result } from '#core/host-contract/host-error';
import { followJob } from '../host/follow-job';
import type { HostClient } from '../host/host-client';

interface RunningJob {
  readonly share: number | null;
  readonly words: string;
}

export interface JobRun<T> {
  readonly running: RunningJob | null;
  readonly trouble: HostError | null;
  readonly result: T | null;
  readonly start: (begin: () => Promise<Result<{ jobId: string }>>) => Promise<T | null>;
  readonly stop: () => void;
  readonly forget: () => void;
}

/** One long piece of work of the host at a time: how far it is, how it ended. Leaving the screen stops it. */
export function useJob<T>(host: HostClient, schema: z.ZodType<T>): JobRun<T> {
  const [running, setRunning] = useState<RunningJob | null>(null);
  const [trouble, setTrouble] = useState<HostError | null>(null);
  const [result, setResult] = useState<T | null>(null);
  const stopper = useRef<AbortController | null>(null);
  useEffect(() => () => stopper.current?.abort(), []);
  const start = useCallback(
    async (begin: () => Promise<Result<{ jobId: string }>>): Promise<T | null> => {
      const stop = new AbortController();
      stopper.current = stop;
      setTrouble(null);
      setResult(null);
      setRunning({ share: null, words: '' });
      const begun = await begin();
      const done: Result<T> = !begun.ok
        ? begun
        : stop.signal.aborted
          ? failure('cancelled')
          : await followJob(host, begun.value.jobId, {
              result: schema,
              signal: stop.signal,
              onProgress: (share, words) => setRunning({ share, words }),
            });
      setRunning(null);
      if (done.ok) setResult(done.value);
      else if (done.error.code !== 'cancelled') setTrouble(done.error);
      return done.ok ? done.value : null;
    },
    [host, schema],
  );
  return {
    running,
    trouble,
    result,
    start,
    stop: useCallback(() => stopper.current?.abort(), []),
    forget: useCallback(() => setResult(null), []),
  };
}
