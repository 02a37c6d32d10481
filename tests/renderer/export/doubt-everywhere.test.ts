import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { pairPartOf } from '#core/compare/pair-part';
import { pairTable } from '#core/compare/pair-table';
import type { Composition } from '#core/drawing/composition';
import { composeSheet } from '#core/exporting/compose-sheet';
import { composePairStill, composeStill } from '#core/exporting/compose-still';
import { cycleFrames } from '#core/exporting/cycle-frames';
import { differencesCsv } from '#core/exporting/differences-csv';
import { eventsCsv } from '#core/exporting/events-csv';
import { eventsVtt } from '#core/exporting/events-vtt';
import { type ExportSource, exportSource, namedReadings } from '#core/exporting/export-source';
import { landmarksCsv } from '#core/exporting/landmarks-csv';
import { readingsCsv, readingsJson } from '#core/exporting/readings-csv';
import { composeHandout } from '#core/handout/compose-handout';
import { firstHandout } from '#core/handout/first-handout';
import { formatReading, valueLine } from '#core/measures/format-reading';
import type { ComputedReading } from '#core/measures/reading';
import { seasonChange, seasonChangeWords, seasonLines } from '#core/practice/season-change';
import { seasonSwim } from '#core/practice/season-swim';
import { trialContrasts } from '#core/practice/trial-contrast';
import { trialPoints } from '#core/practice/trial-points';
import { trialCsv } from '#core/practice/trial-csv';
import { trialRow } from '#core/practice/trial-row';
import { noTags } from '#core/swim-file/condition-tags';
import { parseSwim } from '#core/swim-file/swim-file';
import type { Swim } from '#core/swim-file/swim-schema';
import { standingOps } from '#core/video/side-ops';
import { videoLayout } from '#core/video/video-layout';
import { videoPlanSchema } from '#core/video/video-plan';
import { rhythmOf } from '../../../renderer/open-swim/rhythm-of';
import { differenceText } from '../../../renderer/pair/difference-words';
import { gapSentence, gapWords } from '../../../renderer/score/score-connectors';
import { doubtfulAmong } from '../../../renderer/score/use-doubtful-readings';
import { seasonDots } from '../../../renderer/season/season-plot';
import { readingText } from '../../../renderer/season/season-words';
import { contrastWords } from '../../../renderer/trials/trial-contrast-table';
import { trialDots } from '../../../renderer/trials/trial-plot';
import { valueWords } from '../../../renderer/trials/trial-words';

const measure = (words: string, size: number): number => words.length * size * 0.5;
const nobody = { swimmer: null, markingError: null };
const id = 'kick-frequency';

/** A sample as if its film were so many times slower than life: at 8 a person would kick sixteen times a second. */
function sample(slowdown: number, change: Partial<Swim['card']> = {}): Swim {
  const file = new URL(
    '../../../sample-clips/library/swims/sample-butterfly-together/swim.json',
    import.meta.url,
  );
  const parsed = parseSwim(readFileSync(fileURLToPath(file), 'utf8'));
  if (!parsed.ok) throw new Error('a sample');
  const { clip, card } = parsed.value;
  return {
    ...parsed.value,
    clip: { ...clip, slowdown: { factor: slowdown, source: 'coach' } },
    card: { ...card, ...change },
  };
}

const kickOf = (source: ExportSource): ComputedReading => {
  const found = source.readings.find((each) => each.id === id);
  if (found?.status !== 'computed') throw new Error('kicks are marked');
  return found;
};

/** Every text that an export says of the kick frequency, one a place; each must say the doubt itself. */
function everyText(swim: Swim): readonly (readonly [string, string])[] {
  const source = exportSource(swim, nobody);
  const { clock, context } = source;
  const kick = kickOf(source);
  const chosen = namedReadings(source, [id]);
  const number = valueLine(formatReading(kick, 2));
  // what stands over or under a number on a page is said with it: words of one op, or of one card of the handout
  const onPage = ({ over }: Composition): string =>
    over
      .flatMap((op) => (op.op === 'words' ? [op.words] : []))
      .filter((words) => words.includes(number))
      .join('\n');
  const middle = Math.floor(clock.table.starts.length / 2);
  const cycle = cycleFrames(context.events, clock, middle, 8);
  if (!cycle) throw new Error('a cycle is marked');
  const side = { source, frame: middle, chosen };
  const handout = composeHandout({ ...firstHandout(source, 'a4'), readings: [id] }, source, measure);
  const handoutWords = handout.over.flatMap((op) => (op.op === 'words' ? [op.words] : [])).join('\n');
  const csvRow = (text: string): string =>
    text.split('\r\n').find((row) => row.startsWith(`${id},`)) ?? 'no row';
  const document: unknown = JSON.parse(readingsJson(swim, source.readings));
  const inJson = (document as { readings: { id: string; doubtful?: boolean }[] }).readings.find(
    (each) => each.id === id,
  );
  // a pair of two such swims
  const pair = pairTable(context, context);
  const row = pair.rows.find(({ definition }) => definition.id === id);
  // a trial of two and two
  const rows = [0, 1, 2, 3].map((at) =>
    trialRow(swim, at, { ...noTags, head: at % 2 === 0 ? 'low' : 'high' }, source.readings),
  );
  const contrasts = trialContrasts(rows, { of: 'head' }, id);
  const [contrast] = contrasts.ok ? contrasts.contrasts : [];
  const value = rows[0]?.values.get(id);
  if (!row || !contrast || !value) throw new Error('the kick is compared');
  // a season of two days
  const days = ['2026-05-01', '2026-05-08'].map((date) =>
    seasonSwim({ id: date, card: { ...swim.card, date } }, source.readings, []),
  );
  const [line] = seasonLines(days, id);
  const change = line && seasonChange(line);
  if (!change) throw new Error('a season of two days');
  // dots of plots, and a tie of the score
  const [dot] = trialDots(trialPoints(rows, { of: 'head' }, { x: id, y: id }));
  const [day] = seasonDots([line]);
  const isDoubtful = doubtfulAmong(source.readings, swim.clip.slowdown.factor);
  const [stroke] = rhythmOf(context.events).strokes;
  const [gap] = stroke?.gaps ?? [];
  if (!dot || !day || !gap) throw new Error('dots and ties are drawn');
  const doubted = isDoubtful(gap.reading);
  // a video
  const stretch = { first: 0, last: clock.table.starts.length - 1 };
  const part = pairPartOf(swim, nobody, clock, stretch, { on: 'frame', frame: 0 });
  const plain = { swimId: swim.id, stretch, lock: { on: 'frame', frame: 0 }, frame: 0, mirrored: false };
  const plan = videoPlanSchema.parse({
    sides: [{ ...plain, title: '' }],
    ...{ mode: 'time', lead: 0, seconds: 1, slow: 4, rate: 30, width: 1920, sameLength: false, lay: null },
    show: { bodyLine: true, angles: false, score: true, flashes: true, facts: true },
    ...{ caption: '', sound: false, name: 'a video' },
  });
  const video = standingOps([part], plan, videoLayout([part], plan), '', false, measure);
  return [
    ['still', onPage(composeStill(source, middle, chosen, measure))],
    ['still of two', onPage(composePairStill([side, side], measure))],
    ['sheet', onPage(composeSheet(source, cycle, chosen, measure))],
    ['handout', handoutWords],
    ['readings CSV', csvRow(readingsCsv(source.readings, source.definitions))],
    ['readings JSON', inJson?.doubtful ? 'doubtful' : 'no doubt'],
    ['events CSV', eventsCsv(swim, clock, source.timesDoubt).split('\r\n')[1] ?? ''],
    [
      'landmarks CSV',
      landmarksCsv(swim, clock, context.transform, context.camera, source.timesDoubt).split('\r\n')[1] ?? '',
    ],
    ['captions', eventsVtt(swim, clock.table, source.doubt)],
    ['video', video.flatMap((op) => (op.op === 'words' ? [op.words] : [])).join('\n')],
    ['differences CSV', csvRow(differencesCsv(pair))],
    ['pair table', differenceText(row)?.doubtful ? 'doubtful' : 'no doubt'],
    ['trial table and page', valueWords(id, value)],
    ['trial difference', contrastWords(contrast, 'low', 'high').difference],
    ['trial CSV', trialCsv(rows, [id]).split('\r\n')[1] ?? ''],
    ['trial plot', dot.doubt || 'no word'],
    ['season plot', day.doubt || 'no word'],
    ['tie of the score', gapWords(gap, doubted).ms.replace(' ?', ' doubtful')],
    ['tie of the score, heard', gapSentence(gap, 1, doubted)],
    ['season table', readingText(kick)],
    ['season change', seasonChangeWords(change, (each) => each.toFixed(2))],
  ];
}

/** How a doubt is said, in a column as in a sentence. */
const saysDoubt = /doubtful|can’t be right|unlikely/i;

describe('a doubtful number', () => {
  it('is never saved or shown without its doubt', () => {
    const source = exportSource(sample(8), nobody);
    expect(kickOf(source).value).toBeGreaterThan(10);
    for (const [place, text] of everyText(sample(8)))
      expect([place, text]).toEqual([place, expect.stringMatching(saysDoubt)]);
  });

  it('is the only one that is called doubtful', () => {
    for (const [place, text] of everyText(sample(1))) {
      expect(text, place).not.toBe('');
      expect([place, text]).toEqual([place, expect.not.stringMatching(saysDoubt)]);
    }
  });
});
