import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { piecesToFollow } from '#core/follow/keep-followed';
import { nextQuestions, unsurePoints } from '#core/follow/next-questions';
import { overSurface } from '#core/follow/over-surface';
import { settledStretches } from '#core/follow/settled-stretch';
import type { LandmarkName } from '#core/marks/landmark';
import { shownLines } from '#core/drawing/shown-line';
import { emptyScene, type FollowedRun, type Posture } from '#core/swim-file/swim-schema';

const run = (
  landmark: LandmarkName,
  frame: number,
  confidences: readonly number[],
  y = 100,
): FollowedRun => ({
  landmark,
  frame,
  points: confidences.map((confidence, i) => [10 * i, y, confidence]),
});
const posture = (frame: number, points: Posture['points'], hidden: Posture['hidden'] = []): Posture => ({
  frame,
  points,
  hidden,
});
const at = { x: 1, y: 1 };

describe('a point that the coach said is hidden', () => {
  // sure, six unsure, sure, two unsure
  const ear = run('ear', 10, [0.99, 0.4, 0.4, 0.4, 0.4, 0.4, 0.4, 0.99, 0.4, 0.4]);
  const swim = { followed: [ear], postures: [posture(9, { ear: at }), posture(14, {}, ['ear'])] };

  it('stays hidden both ways until it is seen again, and is not asked for there', () => {
    const isSettled = settledStretches(swim);
    expect([10, 11, 14, 16, 17, 18, 19].map((frame) => isSettled('ear', frame))).toEqual([
      false,
      true,
      true,
      true,
      false,
      false,
      false,
    ]);
    expect(isSettled('knee', 14)).toBe(false);
    const isMarked = (landmark: LandmarkName, frame: number): boolean => landmark === 'ear' && frame === 9;
    const asked = nextQuestions(swim.followed, { isMarked, isSettled, interval: 1 / 60 });
    expect(asked.filter(({ sharpens }) => !sharpens).map(({ frame }) => frame >= 18)).toEqual([true]);
    expect(unsurePoints(swim.followed, isSettled)).toBe(2);
  });

  it('ends the questions: as many answers as stretches, whatever was unsure', () => {
    const confidences = fc.array(fc.constantFrom(0.1, 0.5, 0.94, 0.96, 1), { minLength: 1, maxLength: 80 });
    fc.assert(
      fc.property(confidences, (c) => {
        const followed = [run('ear', 0, c)];
        const stretches = c.filter((each, i) => each < 0.95 && !((c[i - 1] ?? 1) < 0.95)).length;
        const postures: Posture[] = [];
        let answers = 0;
        for (;;) {
          const isSettled = settledStretches({ followed, postures });
          const [next] = nextQuestions(followed, { isMarked: () => false, isSettled, interval: 1 / 60 });
          if (!next || next.sharpens) break;
          postures.push(posture(next.frame, {}, ['ear']));
          answers += 1;
        }
        expect(answers).toBe(stretches);
      }),
    );
  });

  it('leaves nothing to be followed again, and makes no body line', () => {
    const isPlaced = (landmark: LandmarkName, frame: number): boolean =>
      swim.postures.some((each) => each.frame === frame && each.points[landmark] !== undefined);
    expect(piecesToFollow([{ first: 9, last: 20 }], swim.followed, isPlaced)).toEqual([]);
    expect([...shownLines({ ...swim, seen: [] }).keys()]).not.toContain(14);
    // sure points of others on that frame are a line, without the hidden one
    const knee = run('knee', 14, [1]);
    expect(shownLines({ ...swim, followed: [ear, knee], seen: [] }).get(14)).toMatchObject({
      followed: ['knee'],
    });
  });
});

describe('a point marked inside a followed stretch', () => {
  it('leaves the stretch alone until it is followed again', () => {
    const toe = run('toe', 0, [0.4, 0.4, 0.4, 0.99, 0.4]);
    const isSettled = settledStretches({ followed: [toe], postures: [posture(1, { toe: at })] });
    expect([0, 1, 2, 3, 4].map((frame) => isSettled('toe', frame))).toEqual([true, true, true, false, false]);
  });
});

describe('an arm over the water', () => {
  const surface = { a: { x: 0, y: 50 }, b: { x: 100, y: 50 } };
  it('is not asked for where its point lies over the surface line', () => {
    const followed = [run('wrist', 0, [0.4, 0.4], 30), run('wrist', 2, [0.4], 70), run('knee', 0, [0.4], 30)];
    const isOver = overSurface({ scene: { ...emptyScene, surface }, followed }, []);
    expect([0, 1, 2].map((frame) => isOver('wrist', frame))).toEqual([true, true, false]);
    expect(isOver('knee', 0)).toBe(false);
    expect(overSurface({ scene: emptyScene, followed }, [])('wrist', 0)).toBe(false);
  });

  it('is not asked for between the way out and the next way in', () => {
    const moments = [
      { kind: 'entry', frame: 5 },
      { kind: 'exit', frame: 20 },
      { kind: 'entry', frame: 30 },
      { kind: 'exit', frame: 45 },
    ] as const;
    const isOver = overSurface({ scene: emptyScene, followed: [] }, moments);
    expect([10, 20, 21, 29, 30, 46].map((frame) => isOver('fingertip', frame))).toEqual([
      false,
      false,
      true,
      true,
      false,
      false,
    ]);
    expect(isOver('hip', 25)).toBe(false);
  });
});
