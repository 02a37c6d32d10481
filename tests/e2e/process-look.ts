import { readdirSync, readFileSync } from 'node:fs';

/** What a process holds at one moment; null where the system does not tell (only Linux does here). */
export interface ProcessLook {
  readonly residentMb: number;
  readonly handles: number;
}

export function lookAtProcess(pid: number): ProcessLook | null {
  if (process.platform !== 'linux') return null;
  const resident = Number(/VmRSS:\s+(\d+)/.exec(readOf(`/proc/${pid}/status`))?.[1] ?? 0);
  return { residentMb: resident / 1024, handles: readdirSync(`/proc/${pid}/fd`).length };
}

/** Bytes of memory that a process's children and theirs hold for themselves; 0 where the system does not tell. */
export function heldByChildren(parent: number): number {
  if (process.platform !== 'linux') return 0;
  const children = childrenOf(parent);
  const bytes = (pid: number): number =>
    Number(/RssAnon:\s+(\d+)/.exec(readOf(`/proc/${pid}/status`))?.[1] ?? 0) * 1024;
  return children.reduce((sum, pid) => sum + bytes(pid), 0);
}

/** Ids of a process's children and theirs, with a command line that holds `words`. */
export function childrenOf(parent: number, words = ''): readonly number[] {
  const parents = new Map<number, number>();
  for (const name of readdirSync('/proc')) {
    if (!/^\d+$/.test(name)) continue;
    const stat = readOf(`/proc/${name}/stat`);
    parents.set(Number(name), Number(stat.slice(stat.lastIndexOf(')') + 2).split(' ')[1]));
  }
  const isBelow = (pid: number): boolean => {
    const up = parents.get(pid);
    return up !== undefined && up > 1 && (up === parent || isBelow(up));
  };
  return [...parents.keys()].filter(
    (pid) => isBelow(pid) && (words === '' || readOf(`/proc/${pid}/cmdline`).includes(words)),
  );
}

/** Empty when the process has ended meanwhile. */
function readOf(file: string): string {
  try {
    return readFileSync(file, 'utf8');
  } catch (error) {
    if (['ENOENT', 'ESRCH'].includes((error as NodeJS.ErrnoException).code ?? '')) return '';
    throw error;
  }
}
