import { describe, expect, it } from 'vitest';
import { mirrorSwim } from '#core/compare/mirror-swim';
import type { BodyInput } from '#core/measures/body/context/body-input';
import { catalogue } from '#core/measures/families';
import type { ReadingUnit } from '#core/measures/reading';
import { type EventMark, plainMark } from '#core/swim-file/swim-schema';
import { recordFromTable } from '#core/timeline/frame-times-record';
import type { MarkingError } from '#core/uncertainty/marking-error';
import { plainKick } from './body/model-swim';
import { mapPoints, marked, readAll, stroking, withSwim } from './marked-whole';

describe('the same swim told otherwise', () => {
  const swims = [marked(stroking, 11), marked({ ...plainKick, travel: 'left', underwater: true }, 12)];
  /** Breaths in two strokes, the head past two marks on either side of the breakout, and the wall. */
  const withCourse = ((): BodyInput => {
    const input = swims[0] as BodyInput;
    const frameOf = (kind: EventMark['kind'], i = 0): number =>
      input.swim.events.filter((each) => each.kind === kind)[i]?.frame ?? Number.NaN;
    const mark = (kind: EventMark['kind'], frame: number, metres: number | null = null): EventMark => ({
      ...plainMark,
      id: `${kind}-${frame}`,
      kind,
      frame,
      metres,
    });
    return withSwim(input, {
      events: [
        ...input.swim.events,
        mark('breath', frameOf('entry') + 20),
        mark('breath', frameOf('entry', 2) + 20),
        mark('distance-mark', frameOf('entry') + 5, 5),
        mark('distance-mark', frameOf('breakout') + 4, 11),
        mark('touch', frameOf('breakout') + 6),
      ],
    });
  })();

  /** Each reading of the changed swim against the first, times what its unit must change by. */
  function expectScaled(
    change: (input: BodyInput) => BodyInput,
    factor: (unit: ReadingUnit) => number = () => 1,
    told: readonly BodyInput[] = [...swims, withCourse],
  ): void {
    let compared = 0;
    for (const input of told) {
      const before = readAll(input);
      const after = new Map(readAll(change(input)).map((each) => [each.id, each]));
      for (const was of before) {
        const is = after.get(was.id);
        expect(is?.status, was.id).toBe(was.status);
        if (was.status === 'missing' || is?.status !== 'computed') continue;
        const times = factor(was.unit);
        const size = Math.max(1e-6, Math.abs(was.interval.high - was.interval.low) * times);
        // a thousandth of the interval: rounding, and steps of the derivatives taken by differences
        for (const [a, b] of [
          [was.value, is.value],
          [was.interval.low, is.interval.low],
          [was.interval.high, is.interval.high],
        ] as const)
          expect(Math.abs(a * times - b), `${was.id} ${a} ${b}`).toBeLessThan(1e-3 * size);
        compared += 1;
      }
    }
    // most of the catalogue can be had of these two swims
    expect(compared).toBeGreaterThan(200);
  }

  it('is of every reading but those that such swims have too little of', () => {
    const computed = [...swims, withCourse].flatMap((input) =>
      readAll(input).flatMap((each) => (each.status === 'computed' ? each.id : [])),
    );
    const left = catalogue.flatMap(({ id }) => (computed.includes(id) ? [] : id));
    // a third harmonic of the kick that can be told is seen at the feet only
    expect(left.filter((id) => !id.startsWith('harmonic-phase-3-'))).toEqual([]);
  });

  const scaledError = (error: MarkingError, pixels: number, time: number): MarkingError => {
    const times = <T extends object>(of: T, by: number): T =>
      Object.fromEntries(Object.entries(of).map(([key, value]) => [key, Number(value) * by])) as T;
    return {
      ...error,
      eventSd: times(error.eventSd, time),
      landmarkSd: times(error.landmarkSd, pixels),
      followedSd: times(error.followedSd, pixels),
      scenePointSd: error.scenePointSd * pixels,
    };
  };

  it('mirrored, with the travel turned round: nothing changes', () => {
    expectScaled((input) => ({ ...input, swim: mirrorSwim(input.swim) }));
  });

  it('with the clock begun elsewhere: nothing changes', () => {
    const late = 37;
    expectScaled((input) => {
      const { table } = input.clock;
      const step = (table.starts[1] ?? 0) - (table.starts[0] ?? 0);
      const lead = Array.from({ length: late }, (_, i) => i * step);
      const starts = [...lead, ...table.starts.map((start) => start + late * step)];
      const moved = { ...table, starts, endTick: table.endTick + late * step };
      const { events, postures, clip } = input.swim;
      return {
        ...withSwim(input, {
          clip: { ...clip, frameTimes: recordFromTable(moved) },
          events: events.map((each) => ({ ...each, frame: each.frame + late })),
          postures: postures.map((each) => ({ ...each, frame: each.frame + late })),
        }),
        clock: { ...input.clock, table: moved },
      };
    });
  });

  it('in a picture twice as large: nothing changes', () => {
    const twice = ({ x, y }: { x: number; y: number }) => ({ x: 2 * x, y: 2 * y });
    expectScaled((input) => {
      const { scene, clip } = input.swim;
      const line = <T extends { a: { x: number; y: number }; b: { x: number; y: number } }>(of: T): T => ({
        ...of,
        a: twice(of.a),
        b: twice(of.b),
      });
      const larger = mapPoints(input, twice);
      return {
        ...withSwim(larger, {
          clip: { ...clip, width: 2 * clip.width, height: 2 * clip.height },
          scene: {
            ...scene,
            level: scene.level && line(scene.level),
            surface: scene.surface && line(scene.surface),
            scale: scene.scale && { ...scene.scale, line: line(scene.scale.line) },
          },
        }),
        error: scaledError(input.error, 2, 1),
      };
    });
  });

  it('with a known length said twice as long: lengths and speeds double, nothing else changes', () => {
    expectScaled(
      (input) => {
        const { scene } = input.swim;
        const scale = scene.scale && {
          ...scene.scale,
          metres: 2 * scene.scale.metres,
          metresSd: 2 * scene.scale.metresSd,
        };
        return withSwim(input, { scene: { ...scene, scale } });
      },
      (unit) => (unit === 'm' || unit === 'm/s' ? 2 : unit === 'm²/s' ? 4 : 1),
      // metres between marks of the course do not come from the scale
      swims,
    );
  });

  it('twice as fast: times halve, rates and speeds double, shapes stay', () => {
    expectScaled(
      (input) => {
        const table = { ...input.clock.table, ticksPerSecond: 2 * input.clock.table.ticksPerSecond };
        return {
          ...withSwim(input, { clip: { ...input.swim.clip, frameTimes: recordFromTable(table) } }),
          clock: { ...input.clock, table },
          error: scaledError(input.error, 1, 0.5),
        };
      },
      (unit) =>
        unit === 's' || unit === 'ms'
          ? 0.5
          : unit === 'Hz' || unit === '1/min' || unit.endsWith('/s')
            ? 2
            : 1,
    );
  });
});
