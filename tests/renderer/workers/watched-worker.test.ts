import { afterEach, beforeEach, expect, it, vi } from 'vitest';
import { askedWorker } from '../../../renderer/workers/ask-worker';
import { type PlainWorker, watchedWorker } from '../../../renderer/workers/watched-worker';

const patience = { checkMs: 100, silentChecks: 4, startChecks: 10 };

function aWorker() {
  const sent: string[] = [];
  const worker: PlainWorker<string, string> = {
    onmessage: null,
    onerror: null,
    postMessage: (message) => void sent.push(message),
    terminate: vi.fn(),
  };
  return { worker, sent, says: (data: string) => worker.onmessage?.({ data } as MessageEvent<string>) };
}
function watched() {
  const { worker, sent, says } = aWorker();
  const listener = { heard: vi.fn(), lost: vi.fn(), checked: vi.fn() };
  return { worker, sent, says, listener, link: watchedWorker(worker, patience, listener) };
}

beforeEach(() => void vi.useFakeTimers());
afterEach(() => void vi.useRealTimers());

it('gives a worker that loads more time than one that has spoken', () => {
  const first = watched();
  first.link.watch();
  vi.advanceTimersByTime(999);
  expect(first.listener.lost).not.toHaveBeenCalled();
  vi.advanceTimersByTime(1);
  expect(first.listener.lost.mock.calls[0]?.[0]).toBe('broken');

  const second = watched();
  second.link.watch();
  second.says('hello');
  vi.advanceTimersByTime(399);
  expect(second.link.isOver()).toBe(false);
  vi.advanceTimersByTime(1);
  expect(second.listener.lost.mock.calls).toEqual([['silent', 'the worker gave no sign of life']]);
  expect(second.worker.terminate).toHaveBeenCalledTimes(1);
});

it('takes every message as a sign of life, and asks nothing of one that owes nothing', () => {
  const { listener, link, says } = watched();
  link.watch();
  for (let n = 0; n < 10; n++) {
    says('at work');
    vi.advanceTimersByTime(300);
  }
  link.rest();
  const checks = listener.checked.mock.calls.length;
  vi.advanceTimersByTime(60_000);
  expect([link.isOver(), checks, listener.checked.mock.calls.length]).toEqual([false, 30, 30]);
});

it('tells a loss once, and sends nothing to a worker that is over', () => {
  const { worker, sent, listener, link } = watched();
  worker.onerror?.({ message: 'out of memory' } as ErrorEvent);
  worker.onerror?.({ message: 'again' } as ErrorEvent);
  link.watch();
  link.send('question');
  vi.advanceTimersByTime(60_000);
  expect(listener.lost.mock.calls).toEqual([['broken', 'out of memory']]);
  expect(sent).toEqual([]);
  const other = watched();
  other.link.end();
  expect([other.link.isOver(), other.listener.lost.mock.calls.length]).toEqual([true, 0]);
});

it('answers a question with the first answer heard, and ends the worker when stopped', async () => {
  const { worker, says } = aWorker();
  const asked = askedWorker(worker, patience);
  const question = {
    message: 'q',
    stopped: 'stopped',
    hear: (told: string) => (told === 'step' ? undefined : told),
  };
  const answer = asked.ask(question);
  says('step');
  says('done');
  expect(await answer).toBe('done');
  const stop = new AbortController();
  const next = asked.ask(question, stop.signal);
  stop.abort();
  await expect(next).rejects.toMatchObject({ name: 'AbortError', message: 'stopped' });
  expect(worker.terminate).toHaveBeenCalledTimes(1);
  await expect(asked.ask(question)).rejects.toThrow('over');
});

it('fails a question with what its hearer throws, and the worker can be asked again', async () => {
  const { worker, says } = aWorker();
  const asked = askedWorker(worker, patience);
  const failing = asked.ask({
    message: 'q',
    stopped: 'stopped',
    hear: (told) => {
      throw new Error(told);
    },
  });
  says('no such frame');
  await expect(failing).rejects.toThrow('no such frame');
  const again = asked.ask({ message: 'q', stopped: 'stopped', hear: (told) => told });
  says('yes');
  expect(await again).toBe('yes');
});
