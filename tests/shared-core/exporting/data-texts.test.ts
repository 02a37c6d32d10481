import webvtt from 'webvtt-parser';
import { describe, expect, it } from 'vitest';
import { csvText } from '#core/exporting/csv-text';
import { cycleFrames } from '#core/exporting/cycle-frames';
import { eventsCsv } from '#core/exporting/events-csv';
import { eventsVtt } from '#core/exporting/events-vtt';
import { landmarksCsv } from '#core/exporting/landmarks-csv';
import { poolTransform } from '#core/scene/pool-transform';
import { tableFromRecord } from '#core/timeline/frame-times-record';
import { aMark, aSwim } from '../../renderer/a-swim';

const swim = aSwim();
const clock = { table: tableFromRecord(swim.clip.frameTimes), slowdown: 1 };
const cellsOf = (csv: string): readonly (readonly string[])[] =>
  csv.split('\r\n').map((line) => line.split(','));

describe('CSV', () => {
  it('quotes what would break a row, and keeps a spreadsheet from running text as a formula', () => {
    expect(csvText(['a', 'b'], [['say "no", twice', -2]])).toBe('a,b\r\n"say ""no"", twice",-2\r\n');
    expect(csvText(['a'], [['=1+1'], ['-3 m']])).toBe("a\r\n'=1+1\r\n'-3 m\r\n");
    expect(() => csvText(['a'], [[Number.NaN]])).toThrow(/finite/);
  });

  it('writes an event with its frame counted both ways and its seconds on both clocks', () => {
    const slow = { table: clock.table, slowdown: 4 };
    const [head, first] = cellsOf(eventsCsv({ events: [aMark('b', 'kick-top', 20)] }, slow, null));
    expect(Object.fromEntries((head ?? []).map((name, i) => [name, first?.[i]]))).toMatchObject({
      kind: 'kick-top',
      frame: '20',
      frame_shown: '21',
      seconds: '0.1',
      clip_seconds: '0.4',
      refined_seconds: '',
    });
  });

  it('tells marked, hidden and followed landmarks apart, and puts points into the pool', () => {
    const marks = {
      postures: [{ frame: 10, points: { hip: { x: 100, y: 50 } }, hidden: ['toe' as const] }],
      followed: [
        {
          landmark: 'toe' as const,
          frame: 10,
          points: [
            [7, 8, 0.5],
            [9, 10, 0.25],
          ] as [number, number, number][],
        },
      ],
      seen: [{ landmark: 'hip' as const, frame: 11, points: [[101, 51, 2.5]] as [number, number, number][] }],
    };
    const left = poolTransform({ ...swim.scene, travel: 'left' }, null);
    const rows = cellsOf(landmarksCsv(marks, clock, left, { state: 'stands', looked: false }, null)).slice(
      1,
      -1,
    );
    expect(rows).toEqual([
      // travel to the left turns x round, and up is positive
      ['10', '11', '0.2', 'hip', 'marked', '100', '50', '-100', '-50', 'px', '', '', ''],
      ['10', '11', '0.2', 'toe', 'hidden', '', '', '', '', '', '', '', ''],
      ['10', '11', '0.2', 'toe', 'followed', '7', '8', '-7', '-8', 'px', '0.5', '', ''],
      ['11', '12', '0.22', 'hip', 'seen', '101', '51', '-101', '-51', 'px', '', '2.5', ''],
      ['11', '12', '0.22', 'toe', 'followed', '9', '10', '-9', '-10', 'px', '0.25', '', ''],
    ]);
  });
});

describe('WebVTT', () => {
  it('is read by an independent parser without a complaint, cues at the container’s own times', () => {
    const table = { ticksPerSecond: 30_000, starts: [2000, 3001, 4004, 91_000, 95_000], endTick: 96_000 };
    const events = [
      aMark('c', 'exit', 3),
      aMark('a', 'entry', 1),
      aMark('b', 'kick-top', 1),
      { ...aMark('d', 'distance-mark', 4), metres: 15 },
      aMark('gone', 'touch', 99),
    ];
    const text = eventsVtt({ events, card: { ...swim.card, swimmerName: 'A --> <B> & C' } }, table, null);
    const { cues, errors } = new webvtt.WebVTTParser().parse(text, 'captions');
    expect(errors).toEqual([]);
    expect(cues.map(({ startTime, endTime, text: words }) => [startTime, endTime, words])).toEqual([
      // 3001/30000 s is 100.033 ms: rounded up, so that its picture is on screen; shown for a second
      [0.101, 1.101, 'Hand entry\nKick top'],
      [3.034, 3.167, 'Hand exit'],
      [3.167, 4.167, 'Distance mark, 15 m'],
    ]);
  });
});

describe('frames of one cycle', () => {
  const at = (frame: number) => ({
    event: aMark(`e${frame}`, 'entry', frame),
    time: frame / 50,
    variance: 0,
  });

  it('lie at equal phase within half a frame, from the cycle that holds the asked frame', () => {
    const found = cycleFrames([at(10), at(51), at(90)], clock, 60, 8);
    expect(found).toMatchObject({ of: 'stroke', number: 2, count: 2 });
    expect(found?.phases.map(({ frame }) => frame)).toEqual([51, 56, 61, 66, 71, 75, 80, 85]);
    for (const { phase, frame } of found?.phases ?? [])
      expect(Math.abs(frame - (51 + 39 * phase))).toBeLessThanOrEqual(0.5);
  });

  it('come from the nearest whole cycle when the asked frame is in none, and are none without a cycle', () => {
    expect(cycleFrames([at(10), at(50)], clock, 99, 4)?.phases.map(({ frame }) => frame)).toEqual([
      10, 20, 30, 40,
    ]);
    expect(cycleFrames([at(10), at(50)], clock, 0, 1)?.phases).toEqual([{ phase: 0, frame: 10 }]);
    expect(cycleFrames([at(10)], clock, 10, 8)).toBeNull();
  });
});
