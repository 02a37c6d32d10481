import { pairTable } from '#core/compare/pair-table';
import { differencesCsv } from '#core/exporting/differences-csv';
import { eventsCsv } from '#core/exporting/events-csv';
import { eventsVtt } from '#core/exporting/events-vtt';
import { exportName, pairExportName } from '#core/exporting/export-name';
import { landmarksCsv } from '#core/exporting/landmarks-csv';
import { readingsCsv, readingsJson } from '#core/exporting/readings-csv';
import { readSwimOnDisk, sourceOf } from '../swim-on-disk';
import { type ExportCommand, oneTarget } from './export-command';
import { writeOut } from './write-out';
import { commandLineWords } from '#core/words/command-line';

export const csvCommand: ExportCommand = {
  name: 'csv',
  about: commandLineWords('readingsEventsLandmarks'),
  usage: '<swim> [--json]',
  valueFlags: [],
  plainFlags: ['--json'],
  async run(asked) {
    const target = oneTarget(asked);
    const found = await readSwimOnDisk(target);
    const source = sourceOf(found);
    const { swim, clock, context } = source;
    const name = (what: string, ending: string): string => exportName(swim.card, [what], ending);
    await writeOut(asked, [
      { name: name('readings', 'csv'), bytes: readingsCsv(source.readings, source.definitions) },
      { name: name('events', 'csv'), bytes: eventsCsv(swim, clock, source.timesDoubt) },
      {
        name: name('landmarks', 'csv'),
        bytes: landmarksCsv(swim, clock, context.transform, context.camera, source.timesDoubt),
      },
      ...(asked.has('--json')
        ? [{ name: name('readings', 'json'), bytes: readingsJson(swim, source.readings) }]
        : []),
    ]);
  },
};

export const vttCommand: ExportCommand = {
  name: 'vtt',
  about: commandLineWords('eventsWebvttCaptions'),
  usage: '<swim>',
  valueFlags: [],
  plainFlags: [],
  async run(asked) {
    const target = oneTarget(asked);
    const source = sourceOf(await readSwimOnDisk(target));
    const { swim, clock } = source;
    await writeOut(asked, [
      { name: exportName(swim.card, ['events'], 'vtt'), bytes: eventsVtt(swim, clock.table, source.doubt) },
    ]);
  },
};

export const jsonCommand: ExportCommand = {
  name: 'json',
  about: commandLineWords('readingsFullJson'),
  usage: '<swim>',
  valueFlags: [],
  plainFlags: [],
  async run(asked) {
    const target = oneTarget(asked);
    const { swim, readings } = sourceOf(await readSwimOnDisk(target));
    const name = exportName(swim.card, ['readings'], 'json');
    await writeOut(asked, [{ name, bytes: readingsJson(swim, readings) }]);
  },
};

export const pairCommand: ExportCommand = {
  name: 'pair',
  about: commandLineWords('differencesTwoSwims'),
  usage: '<swim> <other swim>',
  valueFlags: [],
  plainFlags: [],
  async run(asked) {
    const [first, second, ...rest] = asked.targets;
    if (first === undefined || second === undefined || rest.length > 0) return asked.wrong();
    const found = [await readSwimOnDisk(first), await readSwimOnDisk(second)] as const;
    const [a, b] = [sourceOf(found[0]), sourceOf(found[1])];
    const name = pairExportName(a.swim.card, b.swim.card, ['differences'], 'csv');
    await writeOut(asked, [{ name, bytes: differencesCsv(pairTable(a.context, b.context)) }]);
  },
};
