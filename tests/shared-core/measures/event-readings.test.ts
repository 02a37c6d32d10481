import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { eventKinds } from '#core/marks/event-kind';
import { eventFamilies } from '#core/measures/events/event-families';
import type { ComputedReading, Reading } from '#core/measures/reading';
import { reasonWords } from '#core/measures/reason-words';
import type { EventMark, Swim } from '#core/swim-file/swim-schema';
import { aMark, aSwim } from '#tests/renderer/a-swim';
import { contextOf } from './drawn-swim';

/** A swim at 50 pictures a second, long enough for the frames used here. */
function filmed(events: readonly EventMark[], change: Partial<Swim> = {}, ticksPerSecond = 50): Swim {
  const base = aSwim();
  const frameTimes = { ticksPerSecond, firstTick: 0, gaps: [[1, 4000]] as [number, number][] };
  return { ...base, clip: { ...base.clip, frameTimes }, events: [...events], ...change };
}

function read(swim: Swim, eventSd = 0): ReadonlyMap<string, Reading> {
  const context = contextOf(swim, eventSd);
  return new Map(eventFamilies.flatMap((family) => family.read(context)).map((each) => [each.id, each]));
}

function computed(readings: ReadonlyMap<string, Reading>, id: string): ComputedReading {
  const reading = readings.get(id);
  if (reading?.status !== 'computed') throw new Error(`${id}: ${JSON.stringify(reading)}`);
  return reading;
}

/** Strokes of 55 frames (1.10 s at 50/s): kick one 2 frames after the entry, kick two done 1 frame before the exit. */
function strokes(count: number): EventMark[] {
  const marks: EventMark[] = [];
  for (let i = 0; i <= count; i++) {
    const at = 100 + 55 * i;
    marks.push(aMark(`entry-${i}`, 'entry', at));
    if (i === count) break;
    marks.push(aMark(`top1-${i}`, 'kick-top', at + 2));
    marks.push(aMark(`bottom1-${i}`, 'kick-bottom', at + 12));
    marks.push(aMark(`catch-${i}`, 'catch', at + 16));
    marks.push(aMark(`shoulder-${i}`, 'shoulder', at + 27));
    marks.push(aMark(`top2-${i}`, 'kick-top', at + 28));
    marks.push(aMark(`bottom2-${i}`, 'kick-bottom', at + 38));
    marks.push(aMark(`exit-${i}`, 'exit', at + 39));
  }
  return marks;
}

function kicks(count: number, period: number, down: number, without: readonly number[] = []): EventMark[] {
  return Array.from({ length: count }, (_, i) => i)
    .filter((i) => !without.includes(i))
    .flatMap((i) => [
      aMark(`top-${i}`, 'kick-top', 100 + period * i),
      aMark(`bottom-${i}`, 'kick-bottom', 100 + period * i + down),
    ]);
}

describe('kick rhythm', () => {
  it('reads a kick tempo of 0.40 s as 2.50 Hz and 150 kicks a minute', () => {
    // common ranges of kick tempo 0.40–0.45 s are 2.22–2.50 Hz: computed, 1/0.40
    const readings = read(filmed(kicks(7, 20, 8)));
    expect(computed(readings, 'kick-tempo').value).toBeCloseTo(0.4, 12);
    expect(computed(readings, 'kick-frequency').value).toBeCloseTo(2.5, 12);
    expect(computed(readings, 'kick-rate-per-minute').value).toBeCloseTo(150, 9);
    expect(computed(readings, 'down-kick-time').value).toBeCloseTo(0.16, 12);
    expect(computed(readings, 'up-kick-time').value).toBeCloseTo(0.24, 12);
    expect(computed(readings, 'down-up-ratio').value).toBeCloseTo(2 / 3, 12);
  });

  it('weighs marks as least squares does: two tops a period apart carry √2 of one mark', () => {
    const events = [aMark('a', 'kick-top', 100), aMark('b', 'kick-top', 120)];
    const tempo = computed(read(filmed(events), 0.01), 'kick-tempo');
    const mark = 0.02 ** 2 / 12 + 0.01 ** 2;
    expect(tempo.ownVariance).toBeCloseTo(2 * mark, 12);
  });

  it.each([[[3]], [[2, 3]], [[1, 5]]])('is not misled by kicks %j that were not marked', (without) => {
    const readings = read(filmed(kicks(8, 20, 8, without)));
    expect(computed(readings, 'kick-frequency').value).toBeCloseTo(2.5, 12);
    expect(computed(readings, 'up-kick-time').value).toBeCloseTo(0.24, 12);
  });

  it('starts anew after a pause too long to count in kicks', () => {
    const late = kicks(4, 20, 8).map((each) => ({ ...each, id: `late-${each.id}`, frame: each.frame + 487 }));
    expect(computed(read(filmed([...kicks(4, 20, 8), ...late])), 'kick-tempo').value).toBeCloseTo(0.4, 12);
  });

  it('is twice the stroke rate in butterfly, however unevenly the two kicks are spaced', () => {
    const readings = read(filmed(strokes(4)));
    expect(computed(readings, 'kick-frequency').value).toBeCloseTo(2 / 1.1, 12);
  });

  it('says few cycles below six, and implausible outside 0.5 to 4 Hz', () => {
    expect(computed(read(filmed(kicks(5, 20, 8))), 'kick-frequency').notes).toContain('few-cycles');
    expect(computed(read(filmed(kicks(8, 20, 8))), 'kick-frequency').notes).not.toContain('few-cycles');
    const quick = computed(read(filmed(kicks(8, 4, 2))), 'kick-frequency');
    expect(quick.notes).toContain('implausible-for-a-human');
  });

  it('says so when slow motion was assumed', () => {
    const swim = filmed(kicks(8, 20, 8));
    const assumed = { ...swim, clip: { ...swim.clip, slowdown: { factor: 1, source: 'assumed' as const } } };
    expect(computed(read(assumed), 'kick-frequency').notes).toContain('slowdown-assumed');
  });
});

describe('kick and hands', () => {
  it('reads gaps with the sign of the leg: later is positive', () => {
    const readings = read(filmed(strokes(3)));
    const expected = {
      'kick1-top-to-entry': 40,
      'kick1-bottom-to-entry': 240,
      'kick2-top-to-exit': -220,
      'kick2-bottom-to-exit': -20,
      'gap-t1': 40,
      'gap-t2': -80,
      'gap-t3': 20,
      'gap-t4': -20,
    };
    for (const [id, milliseconds] of Object.entries(expected)) {
      expect(computed(readings, id).value, id).toBeCloseTo(milliseconds, 9);
      expect(computed(readings, `${id}-percent`).value, id).toBeCloseTo(milliseconds / 11, 9);
    }
    // no marking error: frames of 20 ms alone, which hardly lift gaps of one frame and more
    expect(computed(readings, 'gap-total-percent').value).toBeCloseTo(160 / 11, 0);
  });

  it('is unsure of a gap between two frame-rounded marks by √(1/6) of a frame', () => {
    // computed: √(1/6)/50 s = 8.165 ms
    const gap = computed(read(filmed(strokes(1))), 'kick1-top-to-entry');
    expect(Math.sqrt(gap.ownVariance)).toBeCloseTo(8.165, 3);
  });

  it.each([
    [50, 1.818],
    [25, 3.636],
  ])('turns one frame of a 1.10 s stroke at %d a second into %d %%', (rate, percent) => {
    // computed: 100 · (1/rate) / 1.10; frames are moved at 50/s and read on every (50/rate)th of them
    const step = 50 / rate;
    const moved = strokes(1).map((each) =>
      each.id === 'top1-0' ? { ...each, frame: each.frame + step } : each,
    );
    const before = computed(read(filmed(strokes(1))), 'gap-t1-percent').value;
    const after = computed(read(filmed(moved)), 'gap-t1-percent').value;
    expect(after - before).toBeCloseTo(percent, 3);
  });

  it('counts an entry shared by two strokes once: a mean of phases is surer than √n says of neither end', () => {
    // recovery ends at the next entry: over n strokes the inner entries each serve two strokes
    const one = computed(read(filmed(strokes(1)), 0.01), 'phase-recovery').ownVariance;
    const four = computed(read(filmed(strokes(4)), 0.01), 'phase-recovery').ownVariance;
    expect(four).toBeLessThan(one / 3);
    expect(four).toBeGreaterThan(one / 16);
  });

  it('splits the stroke into phases that sum to 100', () => {
    const readings = read(filmed(strokes(3)));
    const phases = ['phase-entry-catch', 'phase-pull', 'phase-push', 'phase-recovery'];
    const sum = phases.reduce((total, id) => total + computed(readings, id).value, 0);
    expect(sum).toBeCloseTo(100, 9);
  });

  it('never forces a stroke of one kick or three into two', () => {
    const events = strokes(4).filter((each) => each.id !== 'top2-1' && each.id !== 'bottom2-1');
    events.push(
      aMark('third-top', 'kick-top', 100 + 2 * 55 + 15),
      aMark('third-bottom', 'kick-bottom', 100 + 2 * 55 + 20),
    );
    const gap = computed(read(filmed(events)), 'kick2-bottom-to-exit');
    expect(gap.cycles).toBe(2);
    expect(gap.notes).toContain('kick-pairing-uneven');
  });

  it('keeps the four gaps for the full stroke', () => {
    const swim = filmed(strokes(3));
    const drill = { ...swim, card: { ...swim.card, arms: 'one-arm-left' as const } };
    for (const id of ['gap-t1', 'gap-t4-percent', 'gap-total-percent'])
      expect(read(drill).get(id)).toMatchObject({ reasons: [{ code: 'not-for-this-drill' }] });
    expect(read(drill).get('kick1-top-to-entry')?.status).toBe('computed');
  });

  it('reads a stroke rate of 54.545 a minute from strokes of 1.10 s', () => {
    // computed: SR = 60 / T
    expect(computed(read(filmed(strokes(3))), 'stroke-rate').value).toBeCloseTo(54.545, 3);
  });
});

describe('distance marks', () => {
  const mark = (id: string, frame: number, metres: number): EventMark => ({
    ...aMark(id, 'distance-mark', frame),
    metres,
  });

  it('brings 0.72 m a kick at 1.20 m/s and 1.667 Hz', () => {
    // Kuhn & Legerlotz 2022, Front Sports Act Living 4:948034: U 1.20, d 0.72 → f 1.667
    const readings = read(filmed([...kicks(8, 30, 12), mark('m5', 100, 5), mark('m11', 350, 11)]));
    expect(computed(readings, 'speed-marks').value).toBeCloseTo(1.2, 9);
    expect(computed(readings, 'kick-frequency').value).toBeCloseTo(1.667, 3);
    expect(computed(readings, 'distance-per-kick').value).toBeCloseTo(0.72, 9);
  });

  it('has stroke length 1.925 m and index 3.369 m²/s at 1.75 m/s and 1.10 s a stroke', () => {
    // computed: SL = U·T, SI = U·SL
    const readings = read(filmed([...strokes(4), mark('m5', 110, 5), mark('m12', 310, 12)]));
    expect(computed(readings, 'speed-marks').value).toBeCloseTo(1.75, 9);
    expect(computed(readings, 'stroke-length').value).toBeCloseTo(1.925, 9);
    expect(computed(readings, 'stroke-index').value).toBeCloseTo(3.36875, 9);
  });
});

describe('symmetry', () => {
  const near = (
    a: ReadonlyMap<string, Reading>,
    b: ReadonlyMap<string, Reading>,
    factor: (id: Reading) => number,
  ) => {
    for (const [id, reading] of a) {
      const other = b.get(id);
      expect(other?.status, id).toBe(reading.status);
      if (reading.status !== 'computed' || other?.status !== 'computed') continue;
      expect(other.value, id).toBeCloseTo(reading.value * factor(reading), 6);
    }
  };
  const swim = filmed([...strokes(4), aMark('b', 'breath', 135)]);

  it('does not mind when the clock starts', () => {
    const later = { ...swim, events: swim.events.map((each) => ({ ...each, frame: each.frame + 313 })) };
    near(read(swim, 0.01), read(later, 0.01), () => 1);
  });

  it('does not mind the order of the marks, nor the way the swimmer goes', () => {
    const turned = {
      ...swim,
      events: [...swim.events].reverse(),
      scene: { ...swim.scene, travel: 'left' as const },
    };
    near(read(swim, 0.01), read(turned, 0.01), () => 1);
  });

  it('reads the same of slow motion that it reads at full speed', () => {
    const slow = {
      ...swim,
      clip: {
        ...swim.clip,
        frameTimes: { ...swim.clip.frameTimes, ticksPerSecond: 25 },
        slowdown: { factor: 2, source: 'coach' as const },
      },
    };
    near(read(swim, 0.01), read(slow, 0.01), () => 1);
  });

  it('doubles rates and halves times when everything goes twice as quick', () => {
    const quick = filmed(swim.events, {}, 100);
    near(read(swim), read(quick), ({ status, ...rest }) => {
      const unit = status === 'computed' ? (rest as ComputedReading).unit : 'ratio';
      if (unit === 'Hz' || unit === '1/min') return 2;
      return unit === 'ms' || unit === 's' ? 0.5 : 1;
    });
  });
});

describe('whatever is marked', () => {
  const anyMark = fc.record({ kind: fc.constantFrom(...eventKinds), frame: fc.nat(900), metres: fc.nat(25) });

  it('gives every reading of the catalogue once: a finite value within its interval, or reasons in words', () => {
    const ids = eventFamilies.flatMap((family) => family.definitions.map((each) => each.id));
    fc.assert(
      fc.property(fc.array(anyMark, { maxLength: 60 }), fc.constantFrom(0, 0.01), (marks, eventSd) => {
        const events = marks.map((each, i) => ({
          ...aMark(`m${i}`, each.kind, each.frame),
          metres: each.kind === 'distance-mark' ? each.metres : null,
        }));
        const readings = eventFamilies.flatMap((family) => family.read(contextOf(filmed(events), eventSd)));
        expect(readings.map((each) => each.id)).toEqual(ids);
        for (const reading of readings) {
          if (reading.status === 'missing') {
            expect(reading.reasons.length).toBeGreaterThan(0);
            for (const reason of reading.reasons) expect(reasonWords(reason)).not.toMatch(/undefined|NaN/);
            continue;
          }
          const { low, high } = reading.interval;
          expect([low, reading.value, high].every(Number.isFinite), reading.id).toBe(true);
          expect(low <= reading.value && reading.value <= high && low < high, reading.id).toBe(true);
        }
      }),
      { numRuns: 300 },
    );
  });

  it('reads nothing out of marks that all fall on one frame', () => {
    const readings = read(
      filmed(eventKinds.flatMap((kind) => [aMark(`${kind}-a`, kind, 50), aMark(`${kind}-b`, kind, 50)])),
    );
    for (const id of ['kick-frequency', 'gap-t1', 'stroke-rate', 'down-kick-time'])
      expect(readings.get(id)?.status, id).toBe('missing');
  });
});
