import type { Composition } from '#core/drawing/composition';
import { composeFan } from '#core/exporting/compose-fan';
import { composeSheet } from '#core/exporting/compose-sheet';
import { composePairStill, composeStill } from '#core/exporting/compose-still';
import { cycleFrames } from '#core/exporting/cycle-frames';
import { exportName, pairExportName } from '#core/exporting/export-name';
import {
  type ExportSource,
  type NamedReading,
  namedReadings,
  usualReadings,
} from '#core/exporting/export-source';
import { mostStillReadings } from '#core/exporting/still-content';
import { drawComposition, hostMeasure } from '../../export/draw-composition';
import { stop } from '../command-end';
import { clipOnDisk, readSwimOnDisk, type SwimOnDisk, sourceOf, orStop } from '../swim-on-disk';
import { checkConsent } from './check-consent';
import { type AskedExport, type ExportCommand, oneTarget } from './export-command';
import { type OutFile, writeOut } from './write-out';
import { commandLineWords } from '#core/words/command-line';

async function png(composition: Composition, swims: readonly SwimOnDisk[]): Promise<Uint8Array> {
  const clips =
    composition.pictures.length === 0
      ? []
      : await Promise.all(
          swims.map(async (each) => ({ file: await clipOnDisk(each), clip: each.swim.clip })),
        );
  const canvas = orStop(await drawComposition(composition, clips, 1));
  return canvas.encode('png');
}

/** Readings named by `--readings`; without it the usual ones. */
function askedReadings(asked: AskedExport, source: ExportSource, usual: number): readonly NamedReading[] {
  const ids = asked.value('--readings')?.split(',');
  if (!ids) return usualReadings(source, usual);
  const named = namedReadings(source, ids).slice(0, mostStillReadings);
  const there = named.map(({ definition }) => definition.id);
  const lost = ids.filter((id) => !there.includes(id));
  if (lost.length > 0)
    return stop(1, commandLineWords('notReadingSwim', { lost: lost.join(', '), mostStillReadings }));
  return named;
}

/** A frame as the coach counts it, from 1, within the clip. */
function frameOf(words: string, { clock }: ExportSource): number {
  const count = clock.table.starts.length;
  if (!/^\d{1,7}$/.test(words) || Number(words) < 1 || Number(words) > count)
    return stop(1, commandLineWords('thereNoFrame', { words, count }));
  return Number(words) - 1;
}

export const stillsCommand: ExportCommand = {
  name: 'stills',
  about: commandLineWords('annotatedPngsChosen'),
  usage: '<swim> [<other swim>] --frames 63,71,80 [--readings kick-frequency,stroke-rate] [--keep-in-view]',
  valueFlags: ['--frames', '--readings'],
  plainFlags: ['--keep-in-view'],
  async run(asked) {
    const [target, other, ...rest] = asked.targets;
    const words = asked.value('--frames')?.split(',');
    if (target === undefined || rest.length > 0 || !words) return asked.wrong();
    const found = await readSwimOnDisk(target);
    const source = sourceOf(found);
    const chosen = askedReadings(asked, source, mostStillReadings - 2);
    if (other !== undefined) {
      if (words.length !== 2) return asked.wrong();
      const second = await readSwimOnDisk(other);
      const secondSource = sourceOf(second);
      checkConsent(asked, [found, second]);
      const [a, b] = [frameOf(words[0] ?? '', source), frameOf(words[1] ?? '', secondSource)];
      const composition = composePairStill(
        [
          { source, frame: a, chosen },
          {
            source: secondSource,
            frame: b,
            chosen: askedReadings(asked, secondSource, mostStillReadings - 2),
          },
        ],
        hostMeasure(),
        asked.has('--keep-in-view'),
      );
      const what = [commandLineWords('frames', { a: a + 1, b: b + 1 })];
      const name = pairExportName(found.swim.card, second.swim.card, what, 'png');
      return writeOut(asked, [{ name, bytes: await png(composition, [found, second]) }]);
    }
    checkConsent(asked, [found]);
    const frames = words.map((each) => frameOf(each, source));
    const files: OutFile[] = [];
    const keep = asked.has('--keep-in-view');
    for (const frame of frames)
      files.push({
        name: exportName(source.swim.card, ['still', commandLineWords('frame', { frame: frame + 1 })], 'png'),
        bytes: await png(composeStill(source, frame, chosen, hostMeasure(), keep), [found]),
      });
    return writeOut(asked, files);
  },
};

/** The cycle asked for by the frame in it; without one, the one in the middle of the clip. */
function askedCycle(asked: AskedExport, source: ExportSource, pictures: number) {
  const words = asked.value('--cycle-at');
  const near = words === null ? Math.floor(source.clock.table.starts.length / 2) : frameOf(words, source);
  const cycle = cycleFrames(source.context.events, source.clock, near, pictures);
  return cycle ?? stop(1, commandLineWords('noWholeCycle'));
}

export const sheetCommand: ExportCommand = {
  name: 'sheet',
  about: commandLineWords('contactSheetOne'),
  usage: '<swim> [--pictures 8|12] [--cycle-at FRAME] [--readings kick-frequency,stroke-rate]',
  valueFlags: ['--pictures', '--cycle-at', '--readings'],
  plainFlags: [],
  async run(asked) {
    const target = oneTarget(asked);
    const pictures = Number(asked.value('--pictures') ?? 8);
    if (pictures !== 8 && pictures !== 12) return asked.wrong();
    const found = await readSwimOnDisk(target);
    const source = sourceOf(found);
    checkConsent(asked, [found]);
    const cycle = askedCycle(asked, source, pictures);
    const composition = composeSheet(source, cycle, askedReadings(asked, source, 6), hostMeasure());
    const name = exportName(source.swim.card, ['sheet', `${cycle.of} ${cycle.number}`], 'png');
    return writeOut(asked, [{ name, bytes: await png(composition, [found]) }]);
  },
};

export const fanCommand: ExportCommand = {
  name: 'fan',
  about: commandLineWords('bodyLinesOne'),
  usage: '<swim> [--cycle-at FRAME]',
  valueFlags: ['--cycle-at'],
  plainFlags: [],
  async run(asked) {
    const target = oneTarget(asked);
    const found = await readSwimOnDisk(target);
    const source = sourceOf(found);
    const cycle = askedCycle(asked, source, 8);
    const composition =
      composeFan(source, cycle, hostMeasure()) ?? stop(1, commandLineWords('fanNeedsTwoBody'));
    const name = exportName(source.swim.card, ['fan', `${cycle.of} ${cycle.number}`], 'png');
    return writeOut(asked, [{ name, bytes: await png(composition, [found]) }]);
  },
};
