import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { layBodyLine, matchedScales, mirrorLaid } from '#core/compare/lay-body-line';
import { likeEvents } from '#core/compare/like-events';
import { mirrorSwim } from '#core/compare/mirror-swim';
import { pairTable } from '#core/compare/pair-table';
import { firstLocks, lockTime } from '#core/compare/pair-lock';
import { swimStretch } from '#core/compare/swim-stretch';
import { computeReadings, readingContext } from '#core/measures/compute-readings';
import { parseSwim } from '#core/swim-file/swim-file';
import { plainMark, type Posture, type Swim } from '#core/swim-file/swim-schema';
import { aSwim } from '../swim-file/a-swim';

const samples = fileURLToPath(new URL('../../../sample-clips/library/swims/', import.meta.url));
function sample(name: string): Swim {
  const parsed = parseSwim(readFileSync(`${samples}sample-${name}/swim.json`, 'utf8'));
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.fault));
  return parsed.value;
}
const contextOf = (swim: Swim) => readingContext(swim, { swimmer: null, markingError: null });
const together = sample('butterfly-together');
const late = sample('butterfly-late-kick');

describe('a pair, reading by reading', () => {
  it('calls the late kick clear: the samples were drawn so', () => {
    const { rows } = pairTable(contextOf(together), contextOf(late));
    const row = rows.find(({ definition }) => definition.id === 'kick2-bottom-to-exit');
    expect(row?.verdict).toBe('clear');
    expect(row?.difference?.value).toBeGreaterThan(50);
  });

  it('finds no difference of a swim with itself, and none of it clear', () => {
    const { rows, unlike, sameSetUp } = pairTable(contextOf(together), contextOf(together));
    expect(unlike).toEqual([]);
    expect(sameSetUp).toBe(true);
    expect(rows.length).toBeGreaterThan(20);
    for (const row of rows) {
      expect(row.difference?.value).toBe(0);
      expect(row.verdict).toBe('within-error');
    }
  });

  it('turns every difference round when the swims change places', () => {
    const there = pairTable(contextOf(together), contextOf(late)).rows;
    const back = pairTable(contextOf(late), contextOf(together)).rows;
    expect(back.map(({ verdict }) => verdict)).toEqual(there.map(({ verdict }) => verdict));
    there.forEach((row, i) => {
      if (row.difference) expect(back[i]?.difference?.value).toBeCloseTo(-row.difference.value, 9);
    });
  });

  it('gives no verdict at all with fins against without, and says so', () => {
    const finned = { ...late, card: { ...late.card, aids: ['fins' as const] } };
    const { rows, unlike } = pairTable(contextOf(together), contextOf(finned));
    expect(unlike.map(({ kind }) => kind)).toContain('aids');
    for (const row of rows) expect(['unlike', 'missing', 'other-unit']).toContain(row.verdict);
  });

  it('gives no verdict on lengths and angles from another view, but still on instants', () => {
    const turned = { ...late, card: { ...late.card, view: 'front' as const } };
    const { rows } = pairTable(contextOf(together), contextOf(turned));
    const verdict = (id: string) => rows.find(({ definition }) => definition.id === id)?.verdict;
    expect(verdict('kick2-bottom-to-exit')).toBe('clear');
    for (const row of rows) {
      const leans = [row.first, row.second].some(
        (each) => each.status === 'computed' && each.from.postureFrames.length > 0,
      );
      if (leans) expect(['unlike', 'missing', 'other-unit']).toContain(row.verdict);
    }
  });

  it('compares breathing strokes with breathing ones and others with others', () => {
    const frames = together.events.filter(({ kind }) => kind === 'entry').map(({ frame }) => frame);
    const breathing = (swim: Swim, strokes: readonly number[]): Swim => {
      const entries = swim.events.filter(({ kind }) => kind === 'entry').map(({ frame }) => frame);
      const breaths = strokes.map((stroke) => ({
        ...plainMark,
        id: `b${stroke}`,
        kind: 'breath' as const,
        breathTo: 'front' as const,
        frame: (entries[stroke] ?? 0) + 5,
      }));
      return {
        ...swim,
        events: [...swim.events.filter(({ kind }) => kind !== 'breath'), ...breaths].sort(
          (a, b) => a.frame - b.frame,
        ),
      };
    };
    expect(frames.length).toBeGreaterThan(2);
    const kinds = (a: Swim, b: Swim) => {
      const table = pairTable(contextOf(a), contextOf(b));
      const own = table.rows.filter(({ definition }) => definition.id === 'kick1-top-to-entry');
      return {
        strokes: own.map(({ strokes }) => strokes),
        cycles: own.map(({ first }) => (first.status === 'computed' ? first.cycles : 0)),
        verdicts: own.map(({ verdict }) => verdict),
        unlike: table.unlike.map(({ kind }) => kind),
      };
    };
    const all = frames.slice(1).map((_, i) => i);
    const whole = kinds(breathing(together, []), breathing(together, [])).cycles[0] ?? 0;
    const mixed = kinds(breathing(together, [0]), breathing(late, [0]));
    expect(mixed.strokes).toEqual(['breathing', 'not-breathing']);
    expect(mixed.cycles).toEqual([1, whole - 1]);
    expect(kinds(breathing(together, [0]), breathing(late, [])).strokes).toEqual(['not-breathing']);
    const apart = kinds(breathing(together, all), breathing(late, []));
    expect(apart.strokes).toEqual(['all']);
    expect(apart.verdicts).toEqual(['unlike']);
    expect(apart.unlike).toContain('breathing');
  });

  it('never compares how long or how far a swimmer stays under water', () => {
    const { rows } = pairTable(contextOf(sample('streamline-kick')), contextOf(sample('arms-folded')));
    expect(rows.filter(({ definition }) => definition.id.startsWith('underwater-'))).toEqual([]);
    expect(rows.length).toBeGreaterThan(3);
  });
});

describe('a swim in the mirror', () => {
  it('reads as before, whatever was marked', () => {
    for (const name of ['butterfly-together', 'streamline-kick', 'kick-on-back', 'arms-folded']) {
      const swim = sample(name);
      const before = computeReadings(contextOf(swim));
      const after = computeReadings(contextOf(mirrorSwim(swim)));
      expect(after.map(({ id, status }) => [id, status])).toEqual(
        before.map(({ id, status }) => [id, status]),
      );
      before.forEach((reading, i) => {
        const same = after[i];
        if (reading.status !== 'computed' || same?.status !== 'computed') return;
        expect(Math.abs(same.value - reading.value)).toBeLessThan(1e-6 * (1 + Math.abs(reading.value)));
      });
    }
  });

  it('undoes itself', () => {
    const swim = sample('streamline-kick');
    const twice = mirrorSwim(mirrorSwim(swim));
    expect(twice.scene.travel).toBe(swim.scene.travel);
    twice.postures.forEach((posture, i) => {
      for (const [name, point] of Object.entries(posture.points)) {
        const was = swim.postures[i]?.points[name as keyof Posture['points']];
        expect(point.x).toBeCloseTo(was?.x ?? Number.NaN, 9);
      }
    });
  });
});

describe('one body line on another', () => {
  const line = (points: Posture['points'], change = {}) => ({
    posture: { frame: 0, points, hidden: [] },
    scene: { ...aSwim().scene, travel: 'right' as const },
    width: 640,
    bodyLength: 100,
    ...change,
  });
  const onto = line({ hip: { x: 300, y: 200 }, shoulder: { x: 340, y: 190 } });

  it('meets at the hip, at the same body length, going the same way', () => {
    const other = line(
      { hip: { x: 100, y: 50 }, toe: { x: 180, y: 70 } },
      { bodyLength: 200, scene: { ...aSwim().scene, travel: 'left' as const } },
    );
    const laid = layBodyLine(other, onto, 'hip');
    expect(laid?.scaled).toBe(true);
    expect(laid?.posture.points.hip).toEqual({ x: 300, y: 200 });
    // 80 px behind the hip at twice the size, seen in the mirror: 40 px behind it
    expect(laid?.posture.points.toe).toEqual({ x: 260, y: 210 });
  });

  it('is not laid where the landmark is not marked, and says when sizes are not known', () => {
    expect(layBodyLine(line({ toe: { x: 1, y: 1 } }), onto, 'hip')).toBeNull();
    expect(layBodyLine(line({ hip: { x: 1, y: 1 } }, { bodyLength: null }), onto, 'hip')?.scaled).toBe(false);
  });

  it('lies in the mirror as the mirror of how it lay', () => {
    const point = fc.record({ x: fc.integer({ min: 0, max: 640 }), y: fc.integer({ min: 0, max: 360 }) });
    fc.assert(
      fc.property(point, point, point, (hip, toe, there) => {
        const other = line({ hip, toe });
        const base = line({ hip: there });
        const plain = layBodyLine(other, base, 'hip')?.posture.points.toe;
        const mirrored = layBodyLine(other, mirrorLaid(base), 'hip')?.posture.points.toe;
        expect(mirrored?.x).toBeCloseTo(640 - (plain?.x ?? Number.NaN), 9);
        expect(mirrored?.y).toBe(plain?.y);
      }),
    );
  });

  it('shows both bodies equally long, neither picture larger than it fits', () => {
    expect(matchedScales([0.5, 0.5], [400, 200])).toEqual([0.25, 0.5]);
    expect(matchedScales([0.5, 0.5], [null, 200])).toBeNull();
  });
});

describe('moments that answer each other', () => {
  const at = (kind: 'entry' | 'exit', place: number, id = `${kind}${place}`) => ({
    event: { ...plainMark, id, kind, frame: 0 },
    place,
  });

  it('pairs nearest with nearest, and a missing mark shifts nothing', () => {
    const first = [at('entry', 0), at('entry', 1), at('entry', 2), at('exit', 0.6)];
    const second = [at('entry', 0.02), at('entry', 2.05), at('exit', 0.7)];
    const found = likeEvents(first, second, 0.5);
    expect(found.map(({ first: a, later }) => [a.place, Number(later.toFixed(6))])).toEqual([
      [0, 0.02],
      [2, 0.05],
      [0.6, 0.1],
    ]);
  });
});

describe('a stretch of a swim', () => {
  it('keeps the marks inside, and cuts followed points at its ends', () => {
    const swim = aSwim({
      followed: [{ landmark: 'toe', frame: 5, points: Array.from({ length: 20 }, (_, i) => [i, 0, 1]) }],
    });
    const cut = swimStretch(swim, { first: 11, last: 15 });
    expect(cut.events.map(({ frame }) => frame)).toEqual([12]);
    expect(cut.postures.length).toBe(1);
    expect(cut.followed).toEqual([
      { landmark: 'toe', frame: 11, points: [6, 7, 8, 9, 10].map((x) => [x, 0, 1]) },
    ]);
    expect(swimStretch(swim, { first: 30, last: 40 }).followed).toEqual([]);
  });

  it('locks first on a moment both have', () => {
    const a = contextOf(together).events;
    const b = contextOf(late).events;
    const [one, two] = firstLocks({ events: a, from: 0 }, { events: b, from: 0 });
    const clock = contextOf(together).input.clock;
    expect(lockTime(one, a, clock)).toBe(a.find(({ event }) => event.kind === 'entry')?.time);
    expect(two.on).toBe('event');
    expect(firstLocks({ events: [], from: 3 }, { events: b, from: 7 })).toEqual([
      { on: 'frame', frame: 3 },
      { on: 'frame', frame: 7 },
    ]);
    expect(lockTime({ on: 'event', id: 'gone' }, a, clock)).toBeNull();
  });
});
