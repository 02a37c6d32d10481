import type { Composition } from '#core/drawing/composition';
import type { MeasureWords } from '#core/drawing/drawing-op';
import { measureOn } from '#core/drawing/paint';
import { composeFan } from '#core/exporting/compose-fan';
import { composeSheet } from '#core/exporting/compose-sheet';
import { composeStill } from '#core/exporting/compose-still';
import { cycleFrames } from '#core/exporting/cycle-frames';
import { eventsCsv } from '#core/exporting/events-csv';
import { eventsVtt } from '#core/exporting/events-vtt';
import { exportName } from '#core/exporting/export-name';
import { type ExportSource, namedReadings } from '#core/exporting/export-source';
import { landmarksCsv } from '#core/exporting/landmarks-csv';
import { readingsCsv, readingsJson } from '#core/exporting/readings-csv';
import type { FrameSource } from '../video/frame-source';
import { canvasBlob, drawComposition } from './draw-composition';
import type { ExportChoice } from './export-choice';
import { exportWords } from '#core/words/export';

/** One file to be made: its name, and how. */
export interface ExportJob {
  readonly name: string;
  make(signal: AbortSignal): Promise<Blob>;
}

/** A picture that this machine could not make. */
export class PictureTooLarge extends Error {}

/** The files a choice asks for, except the bundle, which the host makes. In the order they are saved. */
export function exportJobs(
  choice: ExportChoice,
  source: ExportSource,
  film: FrameSource | null,
): readonly ExportJob[] {
  const { swim, clock, context, readings } = source;
  const name = (what: readonly string[], ending: string): string => exportName(swim.card, what, ending);
  const measure = measureInWindow();
  const picture = (what: readonly string[], compose: () => Composition): ExportJob =>
    pictureJob(name(what, 'png'), compose, [film]);
  const text = (what: string, ending: string, type: string, write: () => string): ExportJob => ({
    name: name([what], ending),
    make: async () => new Blob([write()], { type }),
  });
  const onPictures = namedReadings(source, choice.readings);
  const jobs: ExportJob[] = [];
  const wants = (part: Parameters<typeof choice.parts.has>[0]): boolean => choice.parts.has(part);
  if (wants('stills'))
    for (const frame of choice.frames)
      jobs.push(
        picture(['still', exportWords('frame', { frame: frame + 1 })], () =>
          composeStill(source, frame, onPictures, measure, choice.keepInView),
        ),
      );
  const sheet = cycleFrames(context.events, clock, choice.cycleAt, choice.sheetPictures);
  if (wants('sheet') && sheet)
    jobs.push(
      picture(['sheet', `${sheet.of} ${sheet.number}`], () =>
        composeSheet(source, sheet, onPictures, measure),
      ),
    );
  const fan = sheet && composeFan(source, sheet, measure);
  if (wants('fan') && sheet && fan) jobs.push(picture(['fan', `${sheet.of} ${sheet.number}`], () => fan));
  if (wants('readings-csv'))
    jobs.push(text('readings', 'csv', 'text/csv', () => readingsCsv(readings, source.definitions)));
  if (wants('events-csv'))
    jobs.push(text('events', 'csv', 'text/csv', () => eventsCsv(swim, clock, source.timesDoubt)));
  if (wants('landmarks-csv'))
    jobs.push(
      text('landmarks', 'csv', 'text/csv', () =>
        landmarksCsv(swim, clock, context.transform, context.camera, source.timesDoubt),
      ),
    );
  if (wants('readings-json'))
    jobs.push(text('readings', 'json', 'application/json', () => readingsJson(swim, readings)));
  if (wants('events-vtt'))
    jobs.push(text('events', 'vtt', 'text/vtt', () => eventsVtt(swim, clock.table, source.doubt)));
  return jobs;
}

/** How wide words are on this window's own canvas. */
export function measureInWindow(): MeasureWords {
  const paper = document.createElement('canvas').getContext('2d');
  if (!paper) throw new Error('a canvas has a 2D context');
  return measureOn(paper);
}

/** A composition as a PNG of its own size; one film for each swim of it, null where it is not here. */
export function pictureJob(
  name: string,
  compose: () => Composition,
  films: readonly (FrameSource | null)[],
): ExportJob {
  return {
    name,
    async make(signal) {
      const canvas = document.createElement('canvas');
      await drawComposition(canvas, compose(), { scale: 1, sources: films, signal });
      const png = await canvasBlob(canvas, 'image/png');
      if (!png) throw new PictureTooLarge(name);
      return png;
    },
  };
}

/** Whether a fan can be drawn of the cycle that holds a frame. */
export function canFan(source: ExportSource, cycleAt: number): boolean {
  const cycle = cycleFrames(source.context.events, source.clock, cycleAt, 8);
  return cycle !== null && composeFan(source, cycle, (words, size) => words.length * size) !== null;
}
