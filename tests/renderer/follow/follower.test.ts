import { expect, it } from 'vitest';
import type { FromFollower, ToFollower } from '../../../renderer/follow/follow-message';
import { createFollower, type FollowerWorker } from '../../../renderer/follow/follower';
import type { PieceTask } from '../../../shared-core/follow/piece';

const task: PieceTask = { pictures: [], times: [], marks: [], around: [], bodyLength: 1, step: 1 };
const found = {
  runs: [{ landmark: 'toe' as const, frame: 1, points: [[1, 2, 0.9]] as [number, number, number][] }],
  camera: null,
};

/** A worker that answers as told: `dies` on its first piece, or never answers. */
function workers(behave: (count: number) => 'works' | 'dies' | 'hangs') {
  const made: { ended: boolean }[] = [];
  const make = (): FollowerWorker => {
    const own = { ended: false };
    made.push(own);
    const how = behave(made.length);
    const worker: FollowerWorker = {
      onmessage: null,
      onerror: null,
      postMessage(message: ToFollower) {
        queueMicrotask(() => {
          const say = (data: FromFollower) => worker.onmessage?.({ data } as MessageEvent<FromFollower>);
          if (message.kind === 'open') say({ kind: 'opened' });
          else if (how === 'dies') worker.onerror?.({ message: 'out of memory' } as ErrorEvent);
          else if (how === 'works') {
            say({ kind: 'step', id: message.id, steps: 3 });
            say({ kind: 'done', id: message.id, found });
          }
        });
      },
      terminate() {
        own.ended = true;
      },
    };
    return worker;
  };
  return { make, made };
}
const never = new AbortController().signal;

it('tells its steps and what it found', async () => {
  const { make } = workers(() => 'works');
  const steps: number[] = [];
  expect(await createFollower(make, 'x').follow(task, (n) => steps.push(n), never)).toEqual(found);
  expect(steps).toEqual([3]);
});

it('replaces a worker that dies and follows the piece again', async () => {
  const { make, made } = workers((count) => (count === 1 ? 'dies' : 'works'));
  expect(await createFollower(make, 'x').follow(task, () => undefined, never)).toEqual(found);
  expect(made.map(({ ended }) => ended)).toEqual([true, false]);
});

it('gives up after the second death, with its reason', async () => {
  const { make, made } = workers(() => 'dies');
  await expect(createFollower(make, 'x').follow(task, () => undefined, never)).rejects.toThrow(
    'out of memory',
  );
  expect(made).toHaveLength(2);
});

it('ends the worker when cancelled, and makes a new one next time', async () => {
  const { make, made } = workers((count) => (count === 1 ? 'hangs' : 'works'));
  const follower = createFollower(make, 'x');
  const stop = new AbortController();
  const waiting = follower.follow(task, () => undefined, stop.signal);
  setTimeout(() => stop.abort(), 5);
  await expect(waiting).rejects.toThrow();
  expect(made[0]?.ended).toBe(true);
  expect(await follower.follow(task, () => undefined, never)).toEqual(found);
});

it('takes a worker that says nothing for dead, and follows the piece again', async () => {
  const { make, made } = workers((count) => (count === 1 ? 'hangs' : 'works'));
  const follower = createFollower(make, 'x', { checkMs: 10, silentChecks: 3 });
  expect(await follower.follow(task, () => undefined, never)).toEqual(found);
  expect(made.map(({ ended }) => ended)).toEqual([true, false]);
});

it('says so when no worker gives a sign of life', async () => {
  const { make } = workers(() => 'hangs');
  const follower = createFollower(make, 'x', { checkMs: 10, silentChecks: 3 });
  await expect(follower.follow(task, () => undefined, never)).rejects.toThrow('no sign of life');
});
