import { mkdir, writeFile } from 'node:fs/promises';
import { serialisePractice } from '#core/practice/practice-file';
import { serialiseTrial, type Trial } from '#core/practice/trial-schema';
import { samplePractices } from './make-month';

/** Writes the practices of the month. */
export async function writePractices(library: string): Promise<void> {
  await mkdir(`${library}/practices`, { recursive: true });
  for (const practice of samplePractices())
    await writeFile(`${library}/practices/${practice.id}.json`, serialisePractice(practice));
}

export async function writeTrials(library: string, trials: readonly Trial[]): Promise<void> {
  await mkdir(`${library}/trials`, { recursive: true });
  for (const trial of trials) await writeFile(`${library}/trials/${trial.id}.json`, serialiseTrial(trial));
}
