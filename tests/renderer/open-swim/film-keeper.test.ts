import type { FrameRange } from '#core/timeline/frame-range';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { createStore } from 'zustand/vanilla';
import { failure, success } from '#core/host-contract/host-error';
import { tableFromRecord } from '#core/timeline/frame-times-record';
import { aSwim } from '../../shared-core/swim-file/a-swim';
import type { OpenSwim, ClipStatus } from '../../../renderer/open-swim/open-swim';
import { createFilmStore } from '../../../renderer/open-swim/open-swim';
import { createFilmKeeper } from '../../../renderer/open-swim/film-keeper';
import { createViewStore } from '../../../renderer/open-swim/view-store';
import type { FrameSource, OpenFrameSource } from '../../../renderer/video/frame-source';
import { pictureBudget } from '../../../renderer/video/open-frame-source';

const swim = aSwim();

/** A host whose clip and copy are as the test says, and a source that only notes that it was opened and closed. */
function aBench(state: {
  clip: ClipStatus;
  copy: 'none' | 'ready';
  decodable: boolean;
  job?: unknown;
  pieces?: FrameRange[];
}) {
  const said: string[] = [];
  const open: string[] = [];
  const asked: string[] = [];
  /** The most that all sources open at one time might hold. */
  const most = { bytes: 0 };
  const answers: Readonly<Record<string, () => unknown>> = {
    'swim/clip-status': () => success({ clipStatus: state.clip }),
    'copy/look': () => success(state.copy === 'ready' ? { state: 'ready', bytes: 9 } : { state: 'none' }),
    'copy/make': () => success({ jobId: 'job' }),
    'job/look': () => success(state.job),
    'job/cancel': () => success({}),
    'copy/watch': () => success({ pieces: state.pieces ?? [] }),
  };
  const budgets = new Map<string, number>();
  const openFrameSource: OpenFrameSource = async (input, { budgetBytes = pictureBudget }) => {
    const address = 'address' in input ? input.address : '';
    if (address === 'clip' && !state.decodable) return failure('unsupported-codec', { codec: 'hevc' });
    open.push(address);
    const limitTo = (bytes: number): void => {
      budgets.set(address, bytes);
      most.bytes = Math.max(
        most.bytes,
        [...budgets.values()].reduce((total, each) => total + each, 0),
      );
    };
    limitTo(budgetBytes);
    const source = {
      facts: { width: 640, height: 360, table: tableFromRecord(swim.clip.frameTimes) },
      show: async (frame: number) => ({ frame }),
      memory: () => ({ heldBytes: 0, budgetBytes: budgets.get(address), pictures: 0 }),
      limitTo,
      close: () => {
        open.splice(open.indexOf(address), 1);
        budgets.delete(address);
      },
    };
    return success(source as unknown as FrameSource);
  };
  const leaving = new AbortController();
  const session = {
    host: {
      call: async (name: string, input: unknown) => {
        asked.push(`${name} ${JSON.stringify(input)}`);
        return answers[name]?.() ?? failure('not-found');
      },
      clipAddress: () => 'clip',
      copyAddress: () => 'copy',
      copyPieceAddress: (_id: string, first: number) => `piece ${first}`,
    },
    document: { swim: () => swim },
    view: createViewStore({ frame: 17 }),
    film: createFilmStore(),
    readings: createStore(() => ({})),
    say: (words: string) => said.push(words),
  } as unknown as OpenSwim;
  const keeper = createFilmKeeper(() => session, openFrameSource, leaving.signal);
  return { session, keeper, said, open, asked, most, state, leave: () => leaving.abort() };
}

/** A clip the window can't decode, whose copy is being made. */
const aBenchThatCopies = () =>
  aBench({
    clip: 'present',
    copy: 'none',
    decodable: false,
    job: { state: 'running', share: 0.4, words: 'Making the working copy' },
  });

describe('the film of an open swim', () => {
  beforeEach(() => {
    vi.useFakeTimers();
  });
  afterEach(() => {
    vi.useRealTimers();
  });

  it('opens the clip itself beside its copy for a close look, once, and closes it when the bench is left', async () => {
    const { keeper, open, most, leave } = aBench({ clip: 'present', copy: 'ready', decodable: true });
    await keeper.open('present');
    expect(open).toEqual(['copy']);
    expect(await keeper.ownPicture(3)).not.toBeNull();
    expect(await keeper.ownPicture(4)).not.toBeNull();
    expect(open).toEqual(['copy', 'clip']);
    expect(most.bytes).toBe(pictureBudget);
    leave();
    await vi.advanceTimersByTimeAsync(0);
    expect(open).toEqual(['copy']);
    expect(await keeper.ownPicture(5)).toBeNull();
  });

  it('stays with the copy where the clip itself can’t be decoded', async () => {
    const { keeper, open, session } = aBench({ clip: 'present', copy: 'ready', decodable: false });
    await keeper.open('present');
    expect(await keeper.ownPicture(3)).toBeNull();
    expect(open).toEqual(['copy']);
    expect(session.film.getState().source?.memory().budgetBytes).toBe(pictureBudget);
  });

  it('goes when its disk goes, is said to have gone, and comes back on the same frame', async () => {
    const { session, keeper, said, open, state, leave } = aBench({
      clip: 'present',
      copy: 'none',
      decodable: true,
    });
    await keeper.open('present');
    expect(open).toEqual(['clip']);
    state.clip = 'missing';
    const watching = keeper.unreadable();
    await vi.advanceTimersByTimeAsync(5000);
    expect(session.film.getState()).toMatchObject({
      source: null,
      trouble: { kind: 'missing', waiting: true },
    });
    expect(open).toEqual([]);
    // another film of the same name is no way back
    state.clip = 'changed';
    await vi.advanceTimersByTimeAsync(5000);
    expect(session.film.getState()).toMatchObject({ source: null, trouble: { kind: 'changed' } });
    state.clip = 'present';
    await vi.advanceTimersByTimeAsync(5000);
    await watching;
    expect(session.film.getState().trouble).toBeNull();
    expect(session.view.getState().frame).toBe(17);
    expect(open).toEqual(['clip']);
    expect(said).toEqual(['The clip is back']);
    leave();
  });

  it('goes at once when another film takes the clip’s place, though every picture could be held', async () => {
    const { session, keeper, open, state, leave } = aBench({
      clip: 'present',
      copy: 'none',
      decodable: true,
    });
    await keeper.open('present');
    // a disk that was taken away leaves the pictures that are held
    state.clip = 'missing';
    await vi.advanceTimersByTimeAsync(10_000);
    expect(open).toEqual(['clip']);
    state.clip = 'changed';
    await vi.advanceTimersByTimeAsync(4000);
    expect(session.film.getState()).toMatchObject({ source: null, trouble: { kind: 'changed' } });
    expect(open).toEqual([]);
    state.clip = 'present';
    await vi.advanceTimersByTimeAsync(4000);
    expect(open).toEqual(['clip']);
    // and again, as often as it happens
    state.clip = 'changed';
    await vi.advanceTimersByTimeAsync(6000);
    expect(session.film.getState()).toMatchObject({ source: null, trouble: { kind: 'changed' } });
    leave();
  });

  it('stays with the copy of a clip whose place another film has taken, and says so once', async () => {
    const { session, keeper, said, open, state, leave } = aBench({
      clip: 'present',
      copy: 'ready',
      decodable: true,
    });
    await keeper.open('present');
    state.clip = 'changed';
    await vi.advanceTimersByTimeAsync(20_000);
    expect(session.film.getState()).toMatchObject({ from: 'copy', trouble: null });
    expect(open).toEqual(['copy']);
    expect(said).toEqual([expect.stringContaining('Another film has taken the clip’s place')]);
    leave();
  });

  it('comes from a working copy where the window can’t decode the clip, and says so', async () => {
    const bench = aBenchThatCopies();
    const opening = bench.keeper.open('present');
    await vi.advanceTimersByTimeAsync(1000);
    expect(bench.session.film.getState()).toMatchObject({ copying: { why: 'needed', share: 0.4 } });
    // meanwhile stills, and the copy is made from where the coach is
    expect(bench.asked).toContain('copy/make {"id":"swim-1","frame":17}');
    const meanwhile = bench.session.film.getState().source;
    await expect(meanwhile?.show(17, 1)).rejects.toThrow('Frame 17');
    expect(bench.asked.at(-1)).toBe('copy/stills {"id":"swim-1","around":{"first":17,"last":23},"asked":17}');
    bench.state.job = { state: 'done', result: { bytes: 9 } };
    bench.state.copy = 'ready';
    await vi.advanceTimersByTimeAsync(1000);
    await opening;
    expect(bench.session.film.getState()).toMatchObject({ from: 'copy', copying: null, trouble: null });
    expect(bench.said.join()).toContain('frames and marks are those of the original');
    expect(bench.open).toEqual(['copy']);
  });

  it('shows the pieces of a copy as they are made, under the numbers of the whole film’s frames', async () => {
    const bench = aBenchThatCopies();
    const opening = bench.keeper.open('present');
    await vi.advanceTimersByTimeAsync(100);
    const { source } = bench.session.film.getState();
    bench.state.pieces = [{ first: 10, last: 29 }];
    bench.session.view.setState({ frame: 12 });
    await vi.advanceTimersByTimeAsync(400);
    expect(bench.asked).toContain('copy/watch {"id":"swim-1","frame":12}');
    expect(bench.session.film.getState().copying?.pieces).toEqual(bench.state.pieces);
    expect(await source?.show(12, 1)).toMatchObject({ frame: 12 });
    expect(bench.open).toEqual(['piece 10']);
    // a piece that went (the whole copy is there) is no lost picture: stills are asked for again
    await expect(source?.show(40, 1)).rejects.toThrow('Frame 40');
    bench.state.job = { state: 'done', result: { bytes: 9 } };
    bench.state.copy = 'ready';
    await vi.advanceTimersByTimeAsync(1000);
    await opening;
    expect(bench.open).toEqual(['copy']);
    expect(bench.said).toHaveLength(1);
  });

  it('changes from a slow clip to its pieces and its copy without losing the place, all within one budget', async () => {
    const bench = aBench({
      clip: 'present',
      copy: 'none',
      decodable: true,
      job: { state: 'running', share: null, words: '' },
    });
    await bench.keeper.open('present');
    const before = bench.session.film.getState().source;
    const making = bench.keeper.makeCopy('slow');
    await vi.advanceTimersByTimeAsync(1000);
    expect(bench.session.film.getState().source).toBe(before);
    bench.state.pieces = [{ first: 10, last: 29 }];
    await vi.advanceTimersByTimeAsync(400);
    const growing = bench.session.film.getState().source;
    expect(await growing?.show(17, 1)).toMatchObject({ frame: 17 });
    expect([bench.open, growing?.memory().budgetBytes]).toEqual([['clip', 'piece 10'], pictureBudget]);
    bench.state.job = { state: 'done', result: { bytes: 9 } };
    bench.state.copy = 'ready';
    await vi.advanceTimersByTimeAsync(1000);
    await making;
    expect(bench.session.film.getState().from).toBe('copy');
    expect(bench.session.view.getState().frame).toBe(17);
    expect(bench.open).toEqual(['copy']);
    expect(bench.session.film.getState().source?.memory().budgetBytes).toBe(pictureBudget);
    expect(bench.most.bytes).toBe(pictureBudget);
  });

  it('shows stills where the copy came out different, as some pictures can’t be decoded, and says so', async () => {
    const bench = aBench({
      clip: 'present',
      copy: 'none',
      decodable: false,
      job: { state: 'failed', error: { code: 'copy-differs', detail: { frames: 120, copied: 119 } } },
    });
    await bench.keeper.open('present');
    const { trouble, source } = bench.session.film.getState();
    expect([trouble, source === null]).toEqual([null, false]);
    expect(bench.said.join()).toMatch(/come as stills instead.*120 frames, the copy 119/);
    const coming = source?.show(3, 0).catch(() => undefined);
    await vi.advanceTimersByTimeAsync(0);
    await coming;
    expect(bench.asked.at(-1)).toContain('copy/stills');
  });

  it('is shown from the copy while the clip itself is away', async () => {
    const bench = aBench({ clip: 'missing', copy: 'ready', decodable: true });
    await bench.keeper.open('missing');
    expect(bench.session.film.getState()).toMatchObject({ from: 'copy', trouble: null });
    expect(bench.said.join()).toContain('not there');
  });
});
