import { randomBytes } from 'node:crypto';
import { readdir, rm, stat } from 'node:fs/promises';
import path from 'node:path';
import { fileFailure } from './file-errors';
import { thisComputer } from './this-computer';

/** This start of the program; a process id alone is given out again. */
const thisStart = randomBytes(4).toString('hex');
const owner = `${thisComputer}-${process.pid}-${thisStart}`;
const ownedName = /(?:^|\.)([0-9a-f]{8})-(\d+)-([0-9a-f]{8})-[^/\\]+$/;

/** Hours without a change after which nobody is at a draft any more, whoever began it. Our default. */
const forgottenAfterHours = 24;

/** A name for what is not finished yet. It says which program is at it, so that no other one takes it for left over. */
export const draftName = (id: string, ending = '.part'): string => `${owner}-${id}${ending}`;

/** Whether a name beside the coach's own files was made by `draftName`. */
export const isDraft = (name: string): boolean => ownedName.test(name) && name.endsWith('.part');

/**
 * Whether nobody is at a draft: a program of this computer that has ended began it, or it has lain unchanged for a day
 * (it is another computer's, or the process id was given to somebody else since).
 */
function isForgotten(name: string, changedMs: number, nowMs: number): boolean {
  const [, computer, pid, start] = ownedName.exec(name) ?? [];
  if (computer === thisComputer) {
    if (start === thisStart) return false;
    if (Number(pid) === process.pid || !isRunning(Number(pid))) return true;
  }
  return nowMs - changedMs > forgottenAfterHours * 3_600_000;
}

function isRunning(pid: number): boolean {
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    // somebody else's process may not be asked, and runs
    return (error as NodeJS.ErrnoException).code === 'EPERM';
  }
}

/** Removes the drafts in a folder that nobody is at; only names that `mayBe` takes for drafts are looked at. */
export async function sweepForgotten(folder: string, mayBe: (name: string) => boolean): Promise<void> {
  for (const name of (await readdir(folder)).filter(mayBe)) {
    const file = path.join(folder, name);
    const facts = await stat(file).catch((error: unknown) => {
      // whoever was at it has finished meanwhile
      fileFailure(error, name, 'reading');
      return null;
    });
    if (facts && isForgotten(name, facts.mtimeMs, Date.now()))
      await rm(file, { recursive: true, force: true });
  }
}
