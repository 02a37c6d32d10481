import { readdirSync, readFileSync } from 'node:fs';

const read = (file: string): string => {
  try {
    return readFileSync(file, 'utf8');
  } catch {
    // it has ended meanwhile
    return '';
  }
};

/** What a program is for, by its own words: Chromium names its kinds. */
function kindOf(pid: number): string {
  const words = read(`/proc/${pid}/cmdline`).replaceAll('\0', ' ');
  return /--type=([\w-]+)/.exec(words)?.[1] ?? 'main';
}

/** A program and all it started, each with its kind. */
function family(pid: number): { readonly pid: number; readonly kind: string }[] {
  const parents = readdirSync('/proc')
    .filter((name) => /^\d+$/.test(name))
    .map((name) => ({
      pid: Number(name),
      parent: Number(/^PPid:\s+(\d+)/m.exec(read(`/proc/${name}/status`))?.[1]),
    }));
  const found = [pid];
  for (const each of found)
    found.push(...parents.filter(({ parent }) => parent === each).map((child) => child.pid));
  return found.map((each) => ({ pid: each, kind: kindOf(each) }));
}

/**
 * Megabytes (10⁶ bytes) of memory that a program and all it started hold, by kind. Pages that several share count for
 * each by its share (PSS of Linux), so that the sum is what ending them all would free.
 */
export function memoryOf(pid: number): ReadonlyMap<string, number> {
  const kinds = new Map<string, number>();
  for (const each of family(pid)) {
    const kilobytes = Number(/^Pss:\s+(\d+)/m.exec(read(`/proc/${each.pid}/smaps_rollup`))?.[1] ?? 0);
    kinds.set(each.kind, (kinds.get(each.kind) ?? 0) + (kilobytes * 1024) / 1e6);
  }
  return kinds;
}

/** Megabytes (10⁶ bytes) that one program holds now. */
export const residentOf = (pid: number): number =>
  (Number(/^VmRSS:\s+(\d+)/m.exec(read(`/proc/${pid}/status`))?.[1] ?? 0) * 1024) / 1e6;
