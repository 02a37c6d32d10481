import { expect, it, vi } from 'vitest';
import { createDecoderMaker, type DecoderWorker } from '../../../renderer/video/decoder-in-worker';
import type { FromDecoderWorker, ToDecoderWorker } from '../../../renderer/video/decoder-message';

class AWorker implements DecoderWorker {
  onmessage: DecoderWorker['onmessage'] = null;
  onerror: DecoderWorker['onerror'] = null;
  readonly told: ToDecoderWorker[] = [];
  ended = false;
  postMessage(message: ToDecoderWorker): void {
    this.told.push(message);
  }
  terminate(): void {
    this.ended = true;
  }
  says(data: FromDecoderWorker): void {
    this.onmessage?.({ data } as MessageEvent<FromDecoderWorker>);
  }
}

function aMaker() {
  const workers: AWorker[] = [];
  const make = createDecoderMaker(() => {
    const made = new AWorker();
    workers.push(made);
    return made;
  });
  const listener = { output: vi.fn(), died: vi.fn(), taken: vi.fn() };
  return { workers, listener, decoder: () => make(listener) };
}
const config = { codec: 'vp8' };
const chunk = { type: 'key', timestamp: 0, data: new Uint8Array(4) } as const;
const aPicture = () => ({ close: vi.fn() }) as unknown as VideoFrame & { close: ReturnType<typeof vi.fn> };

it('counts what waits in the decoder, turn by turn', () => {
  const { workers, listener, decoder } = aMaker();
  const made = decoder();
  expect(made.isReady()).toBe(false);
  made.begin(config);
  for (let n = 0; n < 3; n++) made.decode(chunk);
  workers[0]?.says({ kind: 'taken', turn: 1, taken: 2 });
  expect([made.isReady(), made.queued(), listener.taken.mock.calls.length]).toEqual([true, 1, 1]);
  made.begin(config);
  workers[0]?.says({ kind: 'taken', turn: 1, taken: 3 });
  expect([made.queued(), listener.taken.mock.calls.length]).toEqual([0, 1]);
});

it('closes pictures of a turn that is over, and of a film that was closed, and hands on the others', () => {
  const { workers, listener, decoder } = aMaker();
  const first = decoder();
  first.begin(config);
  const [shown, late, later] = [aPicture(), aPicture(), aPicture()];
  workers[0]?.says({ kind: 'picture', turn: 1, picture: shown });
  first.begin(config);
  workers[0]?.says({ kind: 'picture', turn: 1, picture: late });
  first.close();
  // the worker serves the next film; what it still sends of the one before is that film's no more
  decoder().begin(config);
  workers[0]?.says({ kind: 'picture', turn: 2, picture: later });
  expect(listener.output.mock.calls).toEqual([[shown]]);
  expect([shown, late, later].map(({ close }) => close.mock.calls.length)).toEqual([0, 1, 1]);
  expect(workers).toHaveLength(1);
});

it('ends a flush when it has come out, is made ready anew, or dies', async () => {
  const { workers, listener, decoder } = aMaker();
  const made = decoder();
  made.begin(config);
  const [out, anew, dead] = [made.flush(), made.flush(), made.flush()];
  workers[0]?.says({ kind: 'flushed', id: 1 });
  await out;
  made.begin(config);
  await Promise.all([anew, dead]);
  const last = made.flush();
  workers[0]?.says({ kind: 'died', turn: 2 });
  await last;
  expect([made.isReady(), listener.died.mock.calls.length]).toEqual([false, 1]);
});

it('keeps one worker for the next film, and never one whose program failed', () => {
  const { workers, listener, decoder } = aMaker();
  const [first, second] = [decoder(), decoder()];
  first.close();
  second.close();
  expect(workers.map(({ ended }) => ended)).toEqual([false, true]);
  const third = decoder();
  third.begin(config);
  workers[0]?.onerror?.(new Event('error') as ErrorEvent);
  third.close();
  decoder();
  expect([listener.died.mock.calls.length, workers[0]?.ended, workers.length]).toEqual([1, true, 3]);
});

it('gives up a worker that has gone without a word, and looks after one only while it is at work', () => {
  vi.useFakeTimers();
  try {
    const { workers, listener, decoder } = aMaker();
    const made = decoder();
    made.begin(config);
    made.decode(chunk);
    vi.advanceTimersByTime(3000);
    expect(workers[0]?.told.filter(({ kind }) => kind === 'ping').length).toBe(12);
    workers[0]?.says({ kind: 'taken', turn: 1, taken: 1 });
    vi.advanceTimersByTime(3000);
    workers[0]?.says({ kind: 'alive' });
    vi.advanceTimersByTime(60_000);
    expect([made.isReady(), listener.died.mock.calls.length]).toEqual([true, 0]);
    // gone with a picture inside that it has taken up
    made.decode(chunk);
    workers[0]?.says({ kind: 'taken', turn: 1, taken: 2 });
    vi.advanceTimersByTime(10_000);
    expect([made.isReady(), listener.died.mock.calls.length, workers[0]?.ended]).toEqual([false, 1, true]);
    made.close();
    decoder();
    expect(workers).toHaveLength(2);
  } finally {
    vi.useRealTimers();
  }
});
