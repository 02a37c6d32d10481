import fc from 'fast-check';
import { describe, expect, it, onTestFinished, vi } from 'vitest';
import { createStore } from 'zustand/vanilla';
import type { Swim } from '#core/swim-file/swim-schema';
import type { FromReadingsWorker, ToReadingsWorker } from '../../../renderer/open-swim/readings-message';
import {
  type ReadingsReader,
  type ReadingsWorker,
  readInWorker,
  readHere,
  type TellReadings,
} from '../../../renderer/open-swim/readings-reader';
import { createReadingsStore, type Known } from '../../../renderer/open-swim/readings-store';
import {
  changedList,
  changedSwim,
  listChange,
  swimChange,
} from '../../../renderer/open-swim/swim-difference';
import { addEvent } from '../../../renderer/open-swim/event-commands';
import { createSwimDocument } from '../../../renderer/open-swim/swim-document';
import { aMark, aSwim } from '../a-swim';

const kicks = aSwim({
  events: [aMark('t1', 'kick-top', 10), aMark('b1', 'kick-bottom', 20), aMark('t2', 'kick-top', 30)],
});

/** A worker of the test's own: what is posted waits until it is let through, and it may be broken. */
function aWorker() {
  const asked: ToReadingsWorker[] = [];
  const worker: ReadingsWorker = {
    onmessage: null,
    onerror: null,
    postMessage: (message: ToReadingsWorker) => void asked.push(message),
    terminate: () => undefined,
  };
  let swim: Swim | null = null;
  const answer = (): void => {
    const message = asked.shift();
    if (!message) throw new Error('nothing was asked');
    swim = changedSwim(swim, structuredClone(message.swim));
    const told: FromReadingsWorker = {
      readings: {
        start: 0,
        end: 0,
        between: [
          { status: 'missing', id: `of-${swim.events.length}`, reasons: [{ code: 'needs-body-length' }] },
        ],
      },
      tookMs: 1,
    };
    worker.onmessage?.({ data: told } as never);
  };
  return { worker, asked, answer, breakDown: () => worker.onerror?.({} as never) };
}

function opened(startReader: (tell: TellReadings) => ReadingsReader) {
  const document = createSwimDocument(kicks);
  const known = createStore<Known>(() => ({ swimmer: null, markingError: null, coach: null }));
  const jobs: (() => void)[] = [];
  const { store } = createReadingsStore({
    document,
    known,
    startReader,
    rhythmOf: () => ({ strokes: [], cycleStarts: [] }),
    soon: (job) => {
      jobs.push(job);
      return () => undefined;
    },
  });
  const mark = (id: string, frame: number): void => {
    document.run(addEvent(aMark(id, 'kick-bottom', frame)));
  };
  return { store, mark, nextPicture: () => jobs.splice(0).forEach((job) => void job()) };
}

const ids = (store: ReturnType<typeof opened>['store']): string[] =>
  store.getState().readings.map(({ id }) => id);

describe('readings that are made away from the window', () => {
  it('are said to be behind from the moment a mark moves until those of that very swim are back', () => {
    const { worker, asked, answer } = aWorker();
    const { store, mark, nextPicture } = opened(
      readInWorker(
        () => worker,
        () => 0,
      ),
    );
    expect(store.getState()).toMatchObject({ readings: [], behind: true });
    answer();
    expect(ids(store)).toEqual(['of-3']);
    expect(store.getState().behind).toBe(false);
    mark('b2', 40);
    expect(store.getState().behind).toBe(true);
    nextPicture();
    // at work on four marks when a fifth comes, and then a sixth: only the newest is read after it
    mark('b3', 50);
    nextPicture();
    mark('b4', 60);
    nextPicture();
    expect(asked).toHaveLength(1);
    answer();
    expect(ids(store)).toEqual(['of-4']);
    expect(store.getState().behind).toBe(true);
    answer();
    expect(ids(store)).toEqual(['of-6']);
    expect(store.getState().behind).toBe(false);
    expect(asked).toHaveLength(0);
  });

  it.each([
    ['failed', (breakDown: () => void) => breakDown()],
    ['said nothing for twenty seconds', () => void vi.advanceTimersByTime(20_000)],
  ])('are made in the window itself once the worker has %s, and nothing is lost', (_how, end) => {
    vi.useFakeTimers();
    onTestFinished(() => void vi.useRealTimers());
    const { worker, answer, breakDown } = aWorker();
    const { store, mark, nextPicture } = opened(
      readInWorker(
        () => worker,
        () => 0,
      ),
    );
    answer();
    mark('b2', 40);
    nextPicture();
    expect(store.getState().behind).toBe(true);
    end(breakDown);
    expect(store.getState().behind).toBe(false);
    const frequency = store.getState().readings.find(({ id }) => id === 'kick-frequency');
    // tops 20 frames apart at 50 a second
    expect(frequency?.status === 'computed' && frequency.value).toBeCloseTo(2.5, 9);
    mark('b3', 60);
    nextPicture();
    expect(store.getState().behind).toBe(false);
  });

  it('are the same as those made in the window', () => {
    const { store } = opened((tell) => readHere(tell, () => 0));
    expect(store.getState().behind).toBe(false);
    expect(store.getState().readings.length).toBeGreaterThan(100);
  });
});

describe('what is told of a swim that changed', () => {
  it('makes the same list again, and leaves what stayed as it was', () => {
    const item = fc.constantFrom(...Array.from({ length: 6 }, (_, n) => ({ n })));
    fc.assert(
      fc.property(fc.array(item, { maxLength: 8 }), fc.array(item, { maxLength: 8 }), (before, now) => {
        const after = changedList(before, listChange(before, now));
        expect(after).toEqual(now);
        after.forEach((each, i) => void expect(each).toBe(now[i]));
      }),
    );
  });

  it('is only the mark that moved, and the rest keeps its identity', () => {
    const [first, , last] = kicks.events;
    const moved = { ...kicks, events: [first, aMark('b1', 'kick-bottom', 21), last] } as Swim;
    const change = swimChange(kicks, moved);
    expect(change).toEqual({
      rest: {},
      events: { start: 1, end: 1, between: [moved.events[1]] },
      postures: null,
      followed: null,
    });
    const after = changedSwim(kicks, change);
    expect(after).toEqual(moved);
    expect(after.events[0]).toBe(first);
    expect(after.postures).toBe(kicks.postures);
    expect(after.scene).toBe(kicks.scene);
    expect(changedSwim(null, swimChange(null, kicks))).toEqual(kicks);
  });
});
