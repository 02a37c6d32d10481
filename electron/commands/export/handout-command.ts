import { readFile } from 'node:fs/promises';
import path from 'node:path';
import { exportName } from '#core/exporting/export-name';
import type { ExportSource } from '#core/exporting/export-source';
import { firstHandout } from '#core/handout/first-handout';
import { type Handout, longestCue, papers, parseHandout } from '#core/handout/handout-file';
import { errorWords } from '#core/host-contract/error-words';
import { makeHandout } from '../../export/make-handout';
import { faultFailure } from '../../host/kept-file';
import { stop } from '../command-end';
import { clipOnDisk, orStop, readSwimOnDisk, sourceOf } from '../swim-on-disk';
import { checkConsent } from './check-consent';
import { type ExportCommand, oneTarget } from './export-command';
import { writeOut } from './write-out';
import { commandLineWords } from '#core/words/command-line';

export const handoutCommand: ExportCommand = {
  name: 'handout',
  about: commandLineWords('pageSwimmerChoices'),
  usage: '<swim> [--paper a4|letter] [--cue "WORDS"]',
  valueFlags: ['--paper', '--cue'],
  plainFlags: [],
  async run(asked) {
    const target = oneTarget(asked);
    const paper = papers.find((each) => each === (asked.value('--paper') ?? each));
    const cue = asked.value('--cue');
    if (paper === undefined) return asked.wrong();
    if (cue !== null && cue.length > longestCue)
      return stop(2, commandLineWords('cueAtMostLetters', { longestCue }));
    const found = await readSwimOnDisk(target);
    checkConsent(asked, [found]);
    const source = sourceOf(found);
    const kept = await keptHandout(found.folder, source);
    const handout: Handout = {
      ...kept,
      ...(asked.value('--paper') === null ? {} : { paper }),
      ...(cue === null ? {} : { cue }),
    };
    const clip = { file: await clipOnDisk(found), clip: found.swim.clip };
    const made = orStop(await makeHandout(handout, source, clip, new Date()));
    if (made.missing.length > 0)
      console.error(`These letters are not in the page’s family of letters: ${made.missing.join(' ')}`);
    const name = (ending: string): string => exportName(found.swim.card, ['handout'], ending);
    return writeOut(asked, [
      { name: name('pdf'), bytes: made.pdf },
      { name: name('png'), bytes: made.png },
    ]);
  },
};

/** The choices in the swim's folder; the first ones where nobody has chosen yet. */
async function keptHandout(folder: string, source: ExportSource): Promise<Handout> {
  const file = path.join(folder, 'handout.json');
  const text = await readFile(file, 'utf8').catch((error: NodeJS.ErrnoException) => {
    if (error.code === 'ENOENT') return null;
    return stop(1, commandLineWords('cantRead', { file }));
  });
  if (text === null) return firstHandout(source, 'a4');
  const parsed = parseHandout(text);
  if (parsed.ok) return parsed.value;
  const failed = faultFailure(parsed.fault, { damaged: 'file-damaged', newer: 'file-newer-version' }, file);
  return stop(1, failed.ok ? file : errorWords(failed.error).what);
}
