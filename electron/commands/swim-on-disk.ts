import { readFile, stat } from 'node:fs/promises';
import path from 'node:path';
import { type ExportSource, exportSource } from '#core/exporting/export-source';
import { errorWords } from '#core/host-contract/error-words';
import type { Result } from '#core/host-contract/host-error';
import type { ReadingKnowledge } from '#core/measures/compute-readings';
import { swimDoubtWords } from '#core/measures/kick-doubt-words';
import type { Reading } from '#core/measures/reading';
import { parseCoach } from '#core/swim-file/coach-file';
import { parseSquad } from '#core/swim-file/squad-file';
import { parseSwim } from '#core/swim-file/swim-file';
import type { Swim } from '#core/swim-file/swim-schema';
import { coachMarkingError } from '#core/uncertainty/coach-marking-error';
import { containedPath } from '../disk/contained-path';
import { fingerprintOf, sameFingerprint } from '../host/fingerprint';
import { faultFailure } from '../host/kept-file';
import { stop } from './command-end';
import { commandLineWords } from '#core/words/command-line';

/** A swim as a command finds it: its file, and what its library knows of swimmer and coach. */
export interface SwimOnDisk {
  readonly folder: string;
  readonly swim: Swim;
  readonly knowledge: ReadingKnowledge;
}

/** Reads a swim from its folder or its swim.json; ends the command when it can't. */
export async function readSwimOnDisk(at: string): Promise<SwimOnDisk> {
  const facts = await stat(at).catch(() => stop(1, commandLineWords('notThereGive', { at })));
  const file = facts.isDirectory() ? path.join(at, 'swim.json') : at;
  const text = await readFile(file, 'utf8').catch(() => stop(1, commandLineWords('cantRead', { file })));
  const parsed = parseSwim(text);
  if (!parsed.ok) {
    const failed = faultFailure(parsed.fault, { damaged: 'swim-damaged', newer: 'swim-newer-version' }, file);
    stop(1, failed.ok ? file : `${file}: ${errorWords(failed.error).what}`);
  }
  const folder = path.dirname(path.resolve(file));
  return { folder, swim: parsed.value, knowledge: await knowledgeOf(folder, parsed.value) };
}

/** The swimmer's record and the coach's own marking error, when the swim lies in a library that has them. */
async function knowledgeOf(folder: string, swim: Swim): Promise<ReadingKnowledge> {
  const library = path.resolve(folder, '..', '..');
  const textOf = (name: string): Promise<string | null> =>
    readFile(path.join(library, name), 'utf8').catch(() => null);
  const [squadText, coachText] = await Promise.all([textOf('squad.json'), textOf('coach.json')]);
  const squad = squadText === null ? null : parseSquad(squadText);
  const coach = coachText === null ? null : parseCoach(coachText);
  if (coach && !coach.ok)
    console.error(
      `${path.join(library, 'coach.json')} can’t be read, so your own marking error is not used: it is assumed. The file was left in place.`,
    );
  return {
    swimmer: squad?.ok
      ? (squad.value.swimmers.find((each) => each.id === swim.card.swimmerId) ?? null)
      : null,
    markingError: coach?.ok ? coachMarkingError(coach.value, swim.clip.height) : null,
  };
}

export function sourceOf({ swim, knowledge }: SwimOnDisk): ExportSource {
  const source = exportSource(swim, knowledge);
  sayDoubt(swim, source.readings);
  return source;
}

/** Says on standard error when the kick frequency can't be a person's, so that no file leaves with it unseen. */
export function sayDoubt({ card, clip }: Swim, readings: readonly Reading[]): void {
  const doubt = swimDoubtWords(readings, clip.slowdown.factor);
  if (doubt) console.error(`${card.swimmerName || 'This swim'}, ${card.date}: ${doubt}`);
}

/** Where a swim's clip is; ends the command when it is not there or is another film. */
export async function clipOnDisk({ folder, swim }: SwimOnDisk): Promise<string> {
  const { place, fingerprint, originalName } = swim.clip;
  const file = place.kind === 'outside' ? place.path : await containedPath(folder, place.name);
  const print = file === null ? null : await fingerprintOf(file).catch(() => null);
  if (file === null || print === null) return stop(1, commandLineWords('clipNotWhere', { originalName }));
  if (!sameFingerprint(print, fingerprint))
    return stop(1, commandLineWords('clipAnotherFile', { originalName }));
  return file;
}

/** The value of a result, or the command's end with its words. */
export function orStop<T>(result: Result<T>): T {
  if (result.ok) return result.value;
  const { what, todo } = errorWords(result.error);
  return stop(1, `${what} ${todo}`);
}
