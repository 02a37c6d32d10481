import { describe, expect, it } from 'vitest';
import { proposeEvents } from '#core/follow/propose-events';
import { computeReadings, readingContext } from '#core/measures/compute-readings';
import { parabolaVertex } from '#core/signal/parabola-vertex';
import { plainMark, type Swim } from '#core/swim-file/swim-schema';
import { tableFromRecord } from '#core/timeline/frame-times-record';
import { aSwim } from '../swim-file/a-swim';

const rate = 60;
const frames = 100;
/** Toe tops at 0.1, 0.6, 1.1 … s, bottoms a quarter second later: a 2 Hz kick between frames. */
const toeY = (t: number): number => 200 - 40 * Math.cos(2 * Math.PI * 2 * (t - 0.1037));

function kicked(change: Partial<Swim> = {}): Swim {
  const swim = aSwim();
  const line = {
    fingertip: { x: 400, y: 100 },
    wrist: { x: 380, y: 100 },
    elbow: { x: 350, y: 100 },
    shoulder: { x: 310, y: 100 },
    hip: { x: 250, y: 100 },
    knee: { x: 200, y: 100 },
    ankle: { x: 150, y: 100 },
    toe: { x: 120, y: toeY(0) },
  };
  return {
    ...swim,
    clip: { ...swim.clip, frameTimes: { ticksPerSecond: 60, firstTick: 0, gaps: [[1, frames]] } },
    scene: { ...swim.scene, travel: 'right', surface: { a: { x: 0, y: 90 }, b: { x: 640, y: 90 } } },
    events: [],
    postures: [{ frame: 0, points: line, hidden: [] }],
    followed: [
      {
        landmark: 'toe',
        frame: 1,
        points: Array.from({ length: frames - 1 }, (_, i) => [120, toeY((i + 1) / rate), 0.999]),
      },
    ],
    dismissed: [],
    ...change,
  };
}
const proposed = (swim: Swim) =>
  proposeEvents(swim, { table: tableFromRecord(swim.clip.frameTimes), slowdown: 1 });

describe('proposing kicks', () => {
  it('finds them as well from points seen without a mark, with more doubt, and makes no hand moments of seen arms', () => {
    const line = kicked().postures[0]?.points ?? {};
    const seen = Object.entries(line).map(([landmark, { x, y }]) => ({
      landmark: landmark as keyof typeof line,
      frame: 0,
      points: Array.from({ length: frames }, (_, i): [number, number, number] => {
        const t = i / rate;
        if (landmark === 'toe') return [x, toeY(t), 3];
        // the hand goes through the surface and under the shoulder once a second
        const turned = ['fingertip', 'wrist', 'elbow'].includes(landmark);
        return turned ? [310 + 90 * Math.cos(6.28 * t), 100 + 60 * Math.sin(6.28 * t), 3] : [x, y, 3];
      }),
    }));
    const bare = kicked({ postures: [], followed: [] });
    const unmarked = { ...bare, seen, card: { ...bare.card, arms: 'stroking' as const } };
    const found = proposed(unmarked);
    const followed = proposed(kicked());
    expect(found.map(({ kind }) => kind)).toEqual(followed.map(({ kind }) => kind));
    found.forEach(({ time, sdSeconds }, i) => {
      expect(Math.abs(time - (followed[i]?.time ?? 0))).toBeLessThan(0.002);
      expect(sdSeconds).toBeGreaterThan(followed[i]?.sdSeconds ?? 1);
    });
    // a point of the coach's goes before what is seen there
    const marked = {
      ...unmarked,
      postures: [{ frame: 36, points: { toe: { x: 120, y: 400 } }, hidden: [] }],
    };
    expect(proposed(marked)).not.toEqual(found);
  });

  it('finds tops and bottoms in turn, to a hundredth of a frame on a smooth trace', () => {
    const found = proposed(kicked());
    found.forEach(({ kind }, i) => {
      expect(kind).toBe(i % 2 === 0 ? 'kick-top' : 'kick-bottom');
    });
    for (const { kind, time, frame, frames: offset } of found) {
      const phase = (time - 0.1037) / 0.25;
      // picture y runs down: 200 − 40 cos is highest in the picture where the cosine is 1
      expect(Math.abs(phase - Math.round(phase)) * 0.25 * rate).toBeLessThan(0.05);
      expect(Math.round(phase) % 2 === 0).toBe(kind === 'kick-top');
      expect((frame + offset) / rate).toBeCloseTo(time, 6);
    }
    expect(found.length).toBeGreaterThanOrEqual(5);
  });

  it('changes no reading until it is accepted, and then times the kick', () => {
    const read = (swim: Swim) => computeReadings(readingContext(swim, { swimmer: null, markingError: null }));
    const swim = kicked();
    const guesses = proposed(swim);
    const bare = read(swim);
    expect(guesses.length).toBeGreaterThanOrEqual(5);
    // rejected, or rejected but for one: what is only proposed makes no difference
    const gone = guesses.map(({ kind, frame }) => ({ kind, frame }));
    expect(read({ ...swim, dismissed: gone })).toEqual(bare);
    expect(read({ ...swim, dismissed: gone.slice(1) })).toEqual(bare);
    expect(bare.find(({ id }) => id === 'kick-frequency')?.status).toBe('missing');
    expect(bare.flatMap((each) => (each.status === 'computed' ? each.from.eventIds : []))).toEqual([]);
    const events = guesses.map(({ id, kind, frame, frames: off, sdSeconds }) => ({
      ...plainMark,
      id,
      kind,
      frame,
      from: 'proposal' as const,
      refined: { frames: off, sdSeconds },
    }));
    const frequency = read({ ...swim, events }).find(({ id }) => id === 'kick-frequency');
    expect(frequency?.status === 'computed' && frequency.value).toBeCloseTo(2, 2);
  });

  it('leaves out what is marked and what was rejected', () => {
    const all = proposed(kicked());
    const [first, second] = all;
    if (!first || !second) throw new Error('nothing proposed');
    const swim = kicked({ dismissed: [{ kind: second.kind, frame: second.frame + 1 }] });
    const marked: Swim = {
      ...swim,
      events: [
        {
          id: 'a',
          kind: first.kind,
          frame: first.frame,
          hand: null,
          breathTo: null,
          metres: null,
          from: 'coach',
          refined: null,
        },
      ],
    };
    expect(proposed(marked).map(({ id }) => id)).toEqual(all.slice(2).map(({ id }) => id));
  });

  it('speaks for points that are not sure too, and says a wider spread', () => {
    const swim = kicked();
    const withConfidence = (confidence: number) =>
      proposed({
        ...swim,
        followed: swim.followed.map((run) => ({
          ...run,
          points: run.points.map(([x, y]): [number, number, number] => [x, y, confidence]),
        })),
      });
    const sure = withConfidence(0.999);
    const unsure = withConfidence(0.4);
    expect(unsure.map(({ id }) => id)).toEqual(sure.map(({ id }) => id));
    unsure.forEach((each, i) => {
      // what butterfly kicks lean is in both
      expect(each.sdSeconds).toBeGreaterThan(1.3 * (sure[i]?.sdSeconds ?? 0));
    });
    // points that are as good as lost say nothing surely
    expect(withConfidence(0.001).filter((each) => !each.unsure)).toEqual([]);
  });
});

/** The fingertip is 30 px over the line until 0.5 s, goes down through it at 0.6 s, and comes up through it at 1.2 s. */
const height = (t: number): number =>
  t < 0.5 ? 30 : t < 0.7 ? 30 - 300 * (t - 0.5) : t < 1.1 ? -30 : t < 1.3 ? -30 + 300 * (t - 1.1) : 30;

function swung(named: 'fingertip' | 'wrist', isKnown: (frame: number) => boolean = () => true): Swim {
  const swim = kicked();
  const known = Array.from({ length: frames }, (_, i) => i).filter((frame) => frame > 0 && isKnown(frame));
  return {
    ...swim,
    postures: swim.postures.map((posture) => ({
      ...posture,
      points: { ...posture.points, fingertip: { x: 400, y: 60 }, wrist: { x: 380, y: 60 } },
    })),
    followed: known.map((frame) => ({
      landmark: named,
      frame,
      points: [[400, 90 - height(frame / rate), 0.999]],
    })),
  };
}
const handsOf = (swim: Swim) => proposed(swim).filter(({ kind }) => kind === 'entry' || kind === 'exit');

describe('a toe that plainly turns where its points may be lost', () => {
  const toes = (confidence: number, swing: number): Swim => ({
    ...kicked({ postures: [] }),
    followed: [
      {
        landmark: 'toe',
        frame: 1,
        points: Array.from({ length: frames - 1 }, (_, i) => {
          const t = (i + 1) / rate;
          return [120, 200 - swing * Math.cos(2 * Math.PI * 2 * (t - 0.1037)), confidence];
        }),
      },
    ],
  });

  it('is proposed as less sure, near where it turns', () => {
    const found = proposed(toes(0.001, 40));
    expect(found.length).toBeGreaterThanOrEqual(5);
    for (const { time, unsure, sdSeconds } of found) {
      const phase = (time - 0.1037) / 0.25;
      expect(Math.abs(phase - Math.round(phase)) * 0.25).toBeLessThan(2 * sdSeconds);
      expect([unsure, sdSeconds >= 0.1]).toEqual([true, true]);
    }
  });

  it('is not, where it hardly moves, and a sure one is not proposed twice', () => {
    expect(proposed(toes(0.001, 3))).toEqual([]);
    const sure = proposed(kicked());
    expect(sure.every(({ unsure }) => !unsure)).toBe(true);
  });
});

describe('proposing the hand going into and out of the water', () => {
  it('takes the instant it crosses the surface line', () => {
    const found = handsOf(swung('fingertip'));
    expect(found.map(({ kind }) => kind)).toEqual(['entry', 'exit']);
    expect(found[0]?.time).toBeCloseTo(0.6, 3);
    expect(found[1]?.time).toBeCloseTo(1.2, 3);
  });

  it('bridges a hole in the splash, and says a wider spread', () => {
    const whole = handsOf(swung('fingertip'));
    const found = handsOf(swung('fingertip', (frame) => frame < 34 || frame > 39));
    expect(found.map(({ kind }) => kind)).toEqual(['entry', 'exit']);
    expect(found[0]?.time).toBeCloseTo(0.6, 2);
    expect(found[0]?.sdSeconds).toBeGreaterThan(1.5 * (whole[0]?.sdSeconds ?? 0));
  });

  it('lets the wrist speak where no fingertip is known, and says a wider spread', () => {
    const whole = handsOf(swung('fingertip'));
    const found = handsOf(swung('wrist'));
    expect(found.map(({ kind }) => kind)).toEqual(['entry', 'exit']);
    expect(found[0]?.time).toBeCloseTo(0.6, 2);
    expect(found[0]?.sdSeconds).toBeGreaterThan(1.5 * (whole[0]?.sdSeconds ?? 0));
  });

  it('carries a trace on that ends a moment before the surface, and no farther', () => {
    const [soon] = handsOf(swung('fingertip', (frame) => frame < 35));
    expect(soon?.kind).toBe('entry');
    expect(soon?.time).toBeCloseTo(0.6, 2);
    expect(handsOf(swung('fingertip', (frame) => frame < 32))).toEqual([]);
  });

  it('proposes neither without a surface line', () => {
    const swim = swung('fingertip');
    expect(handsOf({ ...swim, scene: { ...swim.scene, surface: null } })).toEqual([]);
  });
});

describe('the turning point of a parabola', () => {
  it('is exact without noise, between samples and on uneven times', () => {
    const times = [0, 0.01, 0.025, 0.04, 0.05];
    const found = parabolaVertex(
      times,
      times.map((t) => 7 - 900 * (t - 0.0222) ** 2),
      0.5,
    );
    expect(found?.time).toBeCloseTo(0.0222, 9);
    expect(found?.value).toBeCloseTo(7, 9);
    expect(found?.bend).toBeCloseTo(-1800, 6);
  });

  it('tells its error: the spread of repeated noise is what it says', () => {
    let state = 12_345;
    const uniform = (): number => {
      state = (state * 48_271) % 2_147_483_647;
      return state / 2_147_483_647;
    };
    const normal = (): number => Math.sqrt(-2 * Math.log(uniform())) * Math.cos(2 * Math.PI * uniform());
    const times = Array.from({ length: 9 }, (_, i) => i / 60);
    const truth = 4.3 / 60;
    const errors: number[] = [];
    let told = 0;
    for (let i = 0; i < 2000; i++) {
      const noisy = times.map((t) => -8000 * (t - truth) ** 2 + 1.5 * normal());
      const found = parabolaVertex(times, noisy, 1.5);
      if (!found) continue;
      errors.push(found.time - truth);
      told += found.timeSd ** 2;
    }
    const spread = Math.sqrt(errors.reduce((sum, e) => sum + e * e, 0) / errors.length);
    // the told spread takes the larger of two estimates, so it may lie some percent above
    expect(Math.sqrt(told / errors.length) / spread).toBeGreaterThan(0.95);
    expect(Math.sqrt(told / errors.length) / spread).toBeLessThan(1.35);
  });
});

describe('proposing how the hand passes the body', () => {
  /** A hand on an ellipse round a shoulder that goes on evenly, hip behind it; everything in pixels and seconds. */
  const [speed, reach, depth, turn] = [200, 150, 90, 1.2];
  const stroked = (shoulderToHip = 100): Swim => {
    const swim = aSwim();
    const whole = (frame: number) => {
      const time = frame / rate;
      const phase = (2 * Math.PI * time) / turn;
      const shoulder = { x: 200 + speed * time, y: 150 };
      const hand = { x: shoulder.x + reach * Math.cos(phase), y: 150 + depth * Math.sin(phase) };
      return {
        shoulder,
        fingertip: { x: hand.x + 10, y: hand.y },
        wrist: { x: hand.x - 10, y: hand.y },
        hip: { x: shoulder.x - shoulderToHip, y: 150 },
      };
    };
    return {
      ...swim,
      clip: {
        ...swim.clip,
        width: 1280,
        height: 720,
        frameTimes: { ticksPerSecond: rate, firstTick: 0, gaps: [[1, frames]] },
      },
      card: { ...swim.card, arms: 'stroking', view: 'side' },
      scene: { ...swim.scene, travel: 'right', surface: null },
      events: [],
      postures: [
        {
          frame: 0,
          hidden: [],
          // a body of 430 pixels
          points: {
            ...whole(0),
            elbow: { x: 270, y: 150 },
            knee: { x: 50, y: 150 },
            ankle: { x: -20, y: 150 },
            toe: { x: -70, y: 150 },
          },
        },
      ],
      followed: (['fingertip', 'wrist', 'shoulder', 'hip'] as const).map((landmark) => ({
        landmark,
        frame: 1,
        points: Array.from({ length: frames - 1 }, (_, i): [number, number, number] => {
          const { x, y } = whole(i + 1)[landmark];
          return [x, y, 0.999];
        }),
      })),
      cameraPath: [{ frames: [0, frames - 1], rows: [], moved: [], turned: null }],
      dismissed: [],
    };
  };
  const first = (swim: Swim, kind: string) => proposed(swim).find((each) => each.kind === kind);

  it('finds catch, shoulder and navel where the geometry has them', () => {
    const swim = stroked();
    const omega = (2 * Math.PI) / turn;
    // hands stop going forward in the water where backward round the shoulder is as quick as the shoulder goes on
    // the first one stands at the trace's edge, so it is the next stroke's
    expect(first(swim, 'catch')?.time).toBeCloseTo(turn + Math.asin(speed / (reach * omega)) / omega, 2);
    expect(first(swim, 'shoulder')?.time).toBeCloseTo(turn / 4, 3);
    expect(first(swim, 'navel')?.time).toBeCloseTo(Math.acos((-0.7 * 100) / reach) / omega, 2);
  });

  it('is less sure of the navel than of the shoulder, as navels lie differently', () => {
    const swim = stroked();
    const [shoulder, navel] = [first(swim, 'shoulder'), first(swim, 'navel')];
    // seven hundredths of the trunk at the hand's speed past it
    const past = reach * ((2 * Math.PI) / turn) * Math.sin(Math.acos((-0.7 * 100) / reach));
    expect(navel?.sdSeconds).toBeGreaterThan((0.07 * 100) / past);
    expect(navel?.sdSeconds).toBeGreaterThan(2 * (shoulder?.sdSeconds ?? 1));
  });

  it('proposes no navel where the hip is not known, and the rest all the same', () => {
    const swim = stroked();
    const bare = {
      ...swim,
      followed: swim.followed.filter(({ landmark }) => landmark !== 'hip'),
      postures: swim.postures.map((posture) => ({ ...posture, frame: 0 })),
    };
    expect(first(bare, 'navel')).toBeUndefined();
    expect(first(bare, 'shoulder')?.time).toBeCloseTo(turn / 4, 3);
  });
});
