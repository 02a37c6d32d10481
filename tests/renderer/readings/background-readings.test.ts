import { describe, expect, it, vi } from 'vitest';
import { computeReadings, readingContext } from '#core/measures/compute-readings';
import { doJob, type BackgroundJob } from '../../../renderer/readings/background-jobs';
import { type BackgroundWorker, backgroundReadings } from '../../../renderer/readings/background-readings';
import { aMark, aSwim } from '../a-swim';

const of = (id: string) => ({
  swim: {
    ...aSwim({
      events: [aMark('t1', 'kick-top', 10), aMark('b1', 'kick-bottom', 20), aMark('t2', 'kick-top', 30)],
    }),
    id,
  },
  swimmer: null,
  markingError: null,
});
const readings = computeReadings(readingContext(of('a').swim, of('a')));
const staying = new AbortController().signal;

/** A worker of the test's own: what is posted waits until it is let through, cloned as a worker would. */
function aWorker() {
  const asked: BackgroundJob[] = [];
  const worker: BackgroundWorker = {
    onmessage: null,
    onerror: null,
    postMessage: (job: BackgroundJob) => void asked.push(structuredClone(job)),
    terminate: vi.fn(),
  };
  return {
    worker,
    asked,
    answer: () => {
      const job = asked.shift();
      if (!job) throw new Error('nothing was asked');
      worker.onmessage?.({ data: structuredClone(doJob(job)) } as never);
    },
    breakDown: () => worker.onerror?.({} as never),
  };
}

describe('measuring beside the window', () => {
  it('gives the very numbers that are computed here, whatever is asked', async () => {
    const { worker, answer } = aWorker();
    const aside = backgroundReadings(() => worker);
    const single = aside.ask('readings', of('a'), staying);
    answer();
    expect(await single).toEqual(readings);
    const pair = aside.ask('pair', [of('a'), of('b')], staying);
    const season = aside.ask('season', { of: of('a'), drills: [] }, staying);
    answer();
    answer();
    expect((await pair)?.rows.find(({ definition }) => definition.id === 'kick-frequency')?.first).toEqual(
      readings.find(({ id }) => id === 'kick-frequency'),
    );
    expect((await season)?.readings.get('kick-frequency')).toEqual(
      readings.find(({ id }) => id === 'kick-frequency'),
    );
  });

  it('does one job at a time, never one that nobody waits for any more, and drops an answer that comes too late', async () => {
    const { worker, asked, answer } = aWorker();
    const aside = backgroundReadings(() => worker);
    const leaving = [new AbortController(), new AbortController()] as const;
    const late = aside.ask('readings', of('a'), leaving[0].signal);
    const never = aside.ask('readings', of('b'), leaving[1].signal);
    const wanted = aside.ask('readings', of('c'), staying);
    expect(asked).toHaveLength(1);
    for (const each of leaving) each.abort();
    answer();
    expect(await late).toBeNull();
    expect(await never).toBeNull();
    expect(asked.map(({ input }) => 'swim' in input && input.swim.id)).toEqual(['c']);
    answer();
    expect(await wanted).toEqual(readings);
  });

  it('goes on in the window where the worker breaks down, with what it owed', async () => {
    const { worker, breakDown } = aWorker();
    const aside = backgroundReadings(() => worker);
    const owed = aside.ask('readings', of('a'), staying);
    breakDown();
    expect(await owed).toEqual(readings);
    expect(worker.terminate).toHaveBeenCalled();
    expect(await aside.ask('readings', of('b'), staying)).toEqual(readings);
  });
});
