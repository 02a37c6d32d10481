import { of, type Guard } from './security-guards';

const ownWrites = 'tests/electron/own-writes.test.ts';
const faults = 'tests/electron/disk-faults.test.ts';
const killed = 'tests/electron/killed-host.test.ts';
const host = 'tests/electron/host.test.ts';
const kept = (test: string) => of('electron/host/kept-file.ts', test);
const errors = of('electron/disk/file-errors.ts', faults);
const drafts = of('electron/disk/drafts.ts', killed);
const generations = (test: string) => of('electron/disk/atomic-file.ts', test);
const autosave = of('renderer/documents/document-autosave.ts', 'tests/renderer/open-swim/autosave.test.ts');

/** What keeps marks when disk, clock or another program does not do its part, one guard at a time. */
export const savingGuards: readonly Guard[] = [
  errors('a full disk is told as one', "ENOSPC: 'disk-full',", ''),
  errors('a read-only disk is told as one', "EROFS: 'read-only',", ''),
  errors(
    'lost permission in reading is told as one',
    "doing === 'reading' ? 'cannot-read' : 'cannot-write'",
    "'cannot-write'",
  ),
  errors('a refused rename is told, not thrown', '!/^E[A-Z0-9]+$/.test(code)', '!codes[code]'),
  autosave('a clock that jumps back holds up no write', 'performance.now()', 'now().getTime()'),
  autosave('changes that keep coming are written', 'longest = 900', 'longest = 90_000'),
  kept(faults)(
    'a slow disk’s writes wait for each other',
    '(this.queue.get(file) ?? Promise.resolve()).then(() =>',
    'Promise.resolve().then(() =>',
  ),
  kept(host)(
    'two windows on one swim: nothing is written over',
    'if (current !== base && !grown) {',
    'if (current !== base && current === null) {',
  ),
  kept(ownWrites)('an own late write is no conflict', 'holds(lineage, writers.last)', 'false'),
  kept(host)(
    'a damaged file is kept aside',
    'await this.disk.writeWhole(path.join(path.dirname(file), aside), before);',
    '',
  ),
  kept(killed)(
    'drafts of a killed save are swept',
    'if (!this.swept.has(file)) await sweepDrafts(file);',
    '',
  ),
  generations(killed)(
    'tries on a full disk push out no good version',
    "'utf8')) === text) return;",
    "'utf8')) === 'x') return;",
  ),
  generations(killed)(
    'a young draft of another program’s save stays',
    'Date.now() - changedMs > savedWithinMinutes * 60_000',
    'changedMs > 0',
  ),
  kept(faults)(
    'a generation is whole before the file is written',
    'if (before !== null && this.parse(before).ok) await keepGeneration',
    'if (before !== null && this.parse(before).ok) void keepGeneration',
  ),
  drafts('an own draft stays', 'if (start === thisStart) return false;', ''),
  drafts('a running program’s draft stays', '!isRunning(Number(pid))', 'true'),
  drafts('another computer’s draft stays for a day', '> forgottenAfterHours * 3_600_000', '> 0'),
  of('electron/host/create-host.ts', host)(
    'a library that is gone is told as gone',
    'if (!present.ok) return present;',
    '',
  ),
];
