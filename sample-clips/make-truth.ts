import { writeFile } from 'node:fs/promises';
import { type LandmarkName, landmarkNames } from '#core/marks/landmark';
import { rowOf, toPicture, trailingEdge } from './drawing/camera';
import { floorLineHalf, poolDepth } from './drawing/draw-pool';
import type { MadeClip } from './make-clip';
import { swimmerModel } from './model/swimmer-model';
import { trueEvents } from './model/true-events';
import { trueStrokes } from './model/true-strokes';
import type { Scenario } from './scenario';
import { type Truth, truthSchema } from './truth-schema';

const round = (value: number, digits: number): number => Number(value.toFixed(digits));

/** Median of at least one number. */
function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[(sorted.length - 1) >> 1] ?? Number.NaN;
}

/** Mean height of each top above the straight line between its neighbouring bottoms, and the reverse for bottoms. */
function kickAmplitude(events: readonly Truth['events'][number][], height: (time: number) => number): number {
  const turns = events.filter((each) => each.kind === 'kick-top' || each.kind === 'kick-bottom');
  const heights = turns.slice(1, -1).flatMap((middle, i) => {
    const before = turns[i];
    const after = turns[i + 2];
    if (!before || !after || before.kind === middle.kind || after.kind === middle.kind) return [];
    const share = (middle.time - before.time) / (after.time - before.time);
    const line = height(before.time) + share * (height(after.time) - height(before.time));
    return [Math.abs(height(middle.time) - line)];
  });
  return heights.reduce((sum, each) => sum + each, 0) / heights.length;
}

/** Everything that is true of a drawn clip, from the model that drew it; nothing from the reading code. */
export function makeTruth(scenario: Scenario, clip: Pick<MadeClip, 'table' | 'times'>): Truth {
  const { camera, technique } = scenario;
  const bodyAt = swimmerModel(technique);
  const length = clip.times.at(-1) ?? 0;
  const events = trueEvents(bodyAt, length, technique.kind);
  // a clip cut short still has its swimmer's kick depth: three whole cycles are looked at, at least
  const threeCycles = technique.startTime + 3 * technique.period;
  const kicks = length > threeCycles ? events : trueEvents(bodyAt, threeCycles, technique.kind);
  const level = (row: number, from: number, to: number): Truth['level'] => ({
    a: { x: round(from * camera.width, 2), y: round(row, 2) },
    b: { x: round(to * camera.width, 2), y: round(row, 2) },
  });
  const undulation = (name: LandmarkName): number => {
    const heights = Array.from(
      { length: 2001 },
      (_, i) => bodyAt(technique.startTime + (technique.period * i) / 2000)[name].y,
    );
    return round(Math.max(...heights) - Math.min(...heights), 4);
  };
  const undulationMetres = Object.fromEntries(landmarkNames.map((name) => [name, undulation(name)]));
  const entries = events.filter((each) => each.kind === 'entry').map((each) => each.time);
  const nearest = (kind: string, time: number): number =>
    events
      .filter((each) => each.kind === kind)
      .map((each) => each.time - time)
      .sort((a, b) => Math.abs(a) - Math.abs(b))[0] ?? Number.NaN;
  const offsets = (kind: 'kick-top' | 'kick-bottom', hand: 'entry' | 'exit'): number[] =>
    events
      .filter((each) => each.kind === hand)
      .map((each) => 1000 * nearest(kind, each.time))
      .filter(Number.isFinite);
  return truthSchema.parse({
    format: 'submark-sample-truth',
    version: 1,
    invented: true,
    clip: scenario.file,
    slowdown: scenario.captureRate / scenario.storedRate,
    frameTimes: { ticksPerSecond: clip.table.ticksPerSecond, starts: clip.table.starts },
    realTimes: clip.times.map((time) => round(time, 6)),
    metresPerPixel: camera.metresPerPixel,
    surfaceRow: camera.surfaceRow,
    surface: level(camera.surfaceRow, 0.1, 0.9),
    level: level(rowOf(camera, -poolDepth, -floorLineHalf), 0.08, 0.92),
    travel: camera.travel,
    carriedMetres: camera.carried ? clip.times.map((time) => round(trailingEdge(camera, time), 5)) : null,
    bodyLengthMetres: technique.size,
    landmarks: landmarkNames,
    points: clip.times.map((time) => {
      const body = bodyAt(time);
      return landmarkNames.flatMap((name) => {
        const { x, y } = toPicture(camera, body[name], time);
        return [round(x, 2), round(y, 2)];
      });
    }),
    events: events.map((each) => ({ kind: each.kind, time: round(each.time, 6) })),
    strokes: technique.kind === 'butterfly' ? trueStrokes(events) : [],
    model: {
      kickFrequencyHz: technique.kicks.length / technique.period,
      strokeRatePerMinute: technique.kind === 'butterfly' ? 60 / technique.period : null,
      meanSpeed: technique.speed,
      speedWave: technique.speedWave,
      speedVariationPercent: round(
        100 * Math.sqrt(technique.speedWave.reduce((sum, each) => sum + each.swing ** 2 / 2, 0)),
        3,
      ),
      waveSpeed: technique.waveSpeed,
      undulationMetres,
      toePeakToPeakMetres: undulation('toe'),
      kickAmplitudeMetres: round(
        kickAmplitude(kicks, (time) => bodyAt(time).toe.y),
        4,
      ),
      kick1TopToEntryMs: entries.length > 0 ? round(median(offsets('kick-top', 'entry')), 2) : null,
      kick2BottomToExitMs: entries.length > 0 ? round(median(offsets('kick-bottom', 'exit')), 2) : null,
    },
  });
}

export async function writeTruth(file: string, truth: Truth): Promise<void> {
  const { points, ...rest } = truth;
  const head = JSON.stringify(rest);
  const rows = points.map((row) => JSON.stringify(row)).join(',\n');
  await writeFile(file, `${head.slice(0, -1)},"points":[\n${rows}\n]}\n`);
}
