import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cropWindows } from '#core/follow/crop-window';
import { sureEnough } from '#core/follow/follow-confidence';
import { followPieces, joinPieces } from '#core/follow/follow-pieces';
import { keepFollowed, piecesToFollow } from '#core/follow/keep-followed';
import { keepSurer } from '#core/follow/keep-surer';
import { nextQuestions } from '#core/follow/next-questions';
import { seenBodyLength } from '#core/follow/seen-body-length';
import type { LandmarkName } from '#core/marks/landmark';
import type { FollowedRun } from '#core/swim-file/swim-schema';

const mark = (landmark: LandmarkName, frame: number) => ({ landmark, frame, x: frame, y: 0 });
const run = (landmark: LandmarkName, frame: number, confidences: readonly number[]): FollowedRun => ({
  landmark,
  frame,
  points: confidences.map((c, i): [number, number, number] => [frame + i, 0, c]),
});
const nothing = (): boolean => false;
const film = { isMarked: nothing, interval: 1 / 60 };

describe('pieces to follow', () => {
  it('are cut where every landmark is marked, and not where one runs on', () => {
    const toes = [0, 10, 20].map((frame) => mark('toe', frame));
    expect(followPieces([...toes, mark('hip', 0), mark('hip', 10), mark('hip', 20)])).toEqual([
      { first: 0, last: 10 },
      { first: 10, last: 20 },
    ]);
    expect(followPieces([...toes, mark('hip', 0), mark('hip', 20)])).toEqual([{ first: 0, last: 20 }]);
  });

  it('need two marks with frames between', () => {
    expect(followPieces([mark('toe', 3)])).toEqual([]);
    expect(followPieces([mark('toe', 3), mark('toe', 4)])).toEqual([]);
  });

  it('are open until followed, and again when the coach marks a point inside', () => {
    const pieces = [{ first: 0, last: 10 }];
    const followed = [run('toe', 1, [1, 1, 1, 1, 1, 1, 1, 1, 1])];
    expect(piecesToFollow(pieces, [], nothing)).toEqual(pieces);
    expect(piecesToFollow(pieces, followed, nothing)).toEqual([]);
    expect(piecesToFollow(pieces, followed, (_, frame) => frame === 5)).toEqual(pieces);
  });
});

describe('keeping what was followed', () => {
  it('replaces what lies in the piece and keeps the rest', () => {
    const before = [run('toe', 1, [1, 1]), run('toe', 11, [1, 1]), run('hip', 1, [1, 1])];
    const fresh = [run('toe', 12, [0.5])];
    expect(keepFollowed(before, [{ first: 10, last: 20 }], fresh)).toEqual([
      run('hip', 1, [1, 1]),
      run('toe', 1, [1, 1]),
      run('toe', 12, [0.5]),
    ]);
  });

  it('cuts a run that crosses the piece', () => {
    const kept = keepFollowed([run('toe', 0, Array(9).fill(1))], [{ first: 3, last: 6 }], []);
    expect(kept.map(({ frame, points }) => [frame, points.length])).toEqual([
      [0, 4],
      [6, 3],
    ]);
  });
});

describe('following again after an answer', () => {
  const marked = (landmark: LandmarkName, frame: number, x: number) => ({
    frame,
    hidden: [],
    points: { [landmark]: { x, y: 0 } },
  });
  const toe = run('toe', 1, [0.9, 0.8, 0.8, 0.9]);

  it('keeps what was surer, and takes what is surer now', () => {
    const lost = run('toe', 1, [0.5, 0.01, 0.01, 0.5]);
    expect(keepSurer([toe], [lost], [], 500)).toEqual([toe]);
    expect(keepSurer([lost], [toe], [], 500)).toEqual([toe]);
    expect(keepSurer([], [lost], [], 500)).toEqual([lost]);
  });

  it('brings what stays to the new mark, and drops it where the mark is far from it', () => {
    const old = run('toe', 1, [0.9, 0.9, 0.9, 0.9, 0.8]);
    const lost = run('toe', 1, [0.1, 0.01, 0.01, 0.1]);
    const near = keepSurer([old], [lost], [marked('toe', 5, 10)], 500)[0];
    expect(near?.points.map(([x]) => x)).toEqual([2, 4, 6, 8]);
    expect(keepSurer([old], [lost], [marked('toe', 5, 16)], 500)).toEqual([lost]);
  });
});

describe('questions', () => {
  it('ask the middle of the longest unsure stretch first', () => {
    const followed = [run('ankle', 0, [1, 0.5, 1]), run('knee', 10, [1, 0.2, 0.2, 0.2, 0.2, 0.2, 1])];
    const questions = nextQuestions(followed, film);
    expect(questions.slice(2).every(({ sharpens }) => sharpens)).toBe(true);
    expect(questions.slice(0, 2).map(({ landmark, frame }) => [landmark, frame])).toEqual([
      ['knee', 13],
      ['ankle', 1],
    ]);
    expect(questions[0]?.frames).toBe(5);
  });

  it('put a short stretch that is far off before a long one that is nearly sure', () => {
    const lost = run('wrist', 40, [1, 0.05, 0.03, 0.05, 1]);
    const doubtful = run('hip', 0, [1, ...Array.from({ length: 12 }, () => 0.9), 1]);
    expect(
      nextQuestions([doubtful, lost], film)
        .slice(0, 2)
        .map(({ landmark }) => landmark),
    ).toEqual(['wrist', 'hip']);
  });

  it('go where the readings need them: the toe at a turn of the kick', () => {
    const even = run('toe', 0, [1, ...Array.from({ length: 21 }, () => 0.5), 1]);
    const need = (_: LandmarkName, frame: number): number => (frame >= 3 && frame <= 7 ? 4 : 1);
    expect(nextQuestions([even], film)[0]?.frame).toBe(11);
    expect(nextQuestions([even], { ...film, need })[0]?.frame).toBe(5);
  });

  it('are worth more where a neighbouring landmark is lost with it', () => {
    const [elbow, wrist, toe] = (['elbow', 'wrist', 'toe'] as const).map((name) =>
      run(name, 0, [0.3, 0.2, 0.3]),
    );
    const gains = new Map(
      nextQuestions(
        [elbow, wrist, toe].flatMap((each) => each ?? []),
        film,
      ).map((each) => [each.landmark, each.gain]),
    );
    expect(gains.get('wrist')).toBeGreaterThan(1.2 * (gains.get('toe') ?? 0));
  });

  it('are not asked where the coach has marked', () => {
    expect(nextQuestions([run('ankle', 0, [0.5])], { ...film, isMarked: () => true })).toEqual([]);
  });

  it('come in falling gain and only of unsure frames', () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: 0, max: 1, noNaN: true }), { minLength: 1, maxLength: 40 }),
        (c) => {
          const questions = nextQuestions([run('toe', 5, c)], film).filter(({ sharpens }) => !sharpens);
          const gains = questions.map(({ gain }) => gain);
          expect([...gains].sort((a, b) => b - a)).toEqual(gains);
          for (const { frame } of questions) expect(c[frame - 5]).toBeLessThan(sureEnough);
        },
      ),
    );
  });
});

it('looks where the swimmer is, in windows of one size inside the picture', () => {
  const marks = [
    { landmark: 'toe' as const, frame: 0, x: 100, y: 300 },
    { landmark: 'hip' as const, frame: 0, x: 300, y: 320 },
    { landmark: 'toe' as const, frame: 10, x: 500, y: 400 },
    { landmark: 'hip' as const, frame: 10, x: 700, y: 300 },
  ];
  const windows = cropWindows(marks, 0, 10, 400, { width: 1280, height: 720 });
  expect(windows).toHaveLength(11);
  for (const { x, y, width, height } of windows) {
    expect([width, height]).toEqual([windows[0]?.width, windows[0]?.height]);
    expect(x).toBeGreaterThanOrEqual(0);
    expect(y + height).toBeLessThanOrEqual(720);
  }
  const middle = windows[5];
  expect((middle?.x ?? 0) + (middle?.width ?? 0) / 2).toBeCloseTo(400, -1);
});

it('takes the body length from the longest posture, filling in what is not marked', () => {
  const whole = {
    frame: 0,
    hidden: [],
    points: { hip: { x: 0, y: 0 }, knee: { x: 185, y: 0 }, ankle: { x: 365, y: 0 }, toe: { x: 462, y: 0 } },
  };
  expect(seenBodyLength([whole])).toBeCloseTo(1000, 6);
  expect(seenBodyLength([{ frame: 0, hidden: [], points: { hip: { x: 0, y: 0 } } }])).toBeNull();
});

it('follows pieces that touch as one, up to so many pictures', () => {
  const pieces = [
    { first: 0, last: 20 },
    { first: 20, last: 41 },
    { first: 41, last: 60 },
    { first: 70, last: 80 },
  ];
  expect(joinPieces(pieces, 50)).toEqual([
    { first: 0, last: 41 },
    { first: 41, last: 60 },
    { first: 70, last: 80 },
  ]);
});

it('asks for a limb’s other end on the frame where the first was marked, if that is nearly as good', () => {
  const sagging = run('wrist', 10, [0.6, 0.55, 0.5, 0.5, 0.5, 0.55, 0.6]);
  const alone = nextQuestions([sagging], film)[0]?.frame;
  const beside = nextQuestions([sagging], {
    ...film,
    isMarked: (landmark, frame) => landmark === 'elbow' && frame === 14,
  })[0]?.frame;
  expect(alone).toBe(13);
  expect(beside).toBe(14);
});
