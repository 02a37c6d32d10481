import { createRequire } from 'node:module';
import { access, constants } from 'node:fs/promises';
import { execa } from 'execa';

export type MediaTool = 'ffmpeg' | 'ffprobe';
export interface FoundTool {
  readonly path: string;
  readonly from: 'environment' | 'ffmpeg-static' | 'PATH' | 'npm package';
  readonly version: string;
}

const require = createRequire(import.meta.url);

/** A packed app's modules are in one archive that nothing can be started from; its programs lie beside it. */
export function besideArchive(file: string): string {
  return file.replace(/([\\/])app\.asar(?=[\\/])/, '$1app.asar.unpacked');
}

function packaged(name: string): string | null {
  try {
    const found: unknown = require(name);
    if (typeof found === 'string') return besideArchive(found);
    const inside = (found as { path?: unknown } | null)?.path;
    return typeof inside === 'string' ? besideArchive(inside) : null;
  } catch (error) {
    // an optional package that is not there, or has no binary for this platform
    const code = (error as NodeJS.ErrnoException).code;
    if (
      code === 'MODULE_NOT_FOUND' ||
      (error instanceof Error && /unsupported|not find|installer/i.test(error.message))
    )
      return null;
    throw error;
  }
}

/**
 * Candidates in order. PATH stands before the binary shipped in an npm package on purpose: that ffmpeg dates from
 * 2018, and parsers that old should not be the first to open files from strangers' cards; it is there so that a
 * machine without any other can still work.
 */
function candidates(
  tool: MediaTool,
): readonly { path: string | null | undefined; from: FoundTool['from'] }[] {
  const variable = tool === 'ffmpeg' ? 'SUBMARK_FFMPEG' : 'SUBMARK_FFPROBE';
  return [
    { path: process.env[variable], from: 'environment' },
    { path: tool === 'ffmpeg' ? packaged('ffmpeg-static') : null, from: 'ffmpeg-static' },
    { path: tool, from: 'PATH' },
    { path: packaged(`@${tool}-installer/${tool}`), from: 'npm package' },
  ];
}

/** Tools that ran once: asking each its version before every call would cost more than many of the calls. */
const known = new Map<string, FoundTool>();

/** How often a tool that was killed or found no time is asked again. Our own limit. */
const asksAtMost = 3;

/**
 * The tool when it runs, null when it is not there. One that was killed while it was asked, or did not get to answer on a
 * busy machine, may be a good one: `unsure`, when that goes on.
 */
async function tried(path: string, from: FoundTool['from']): Promise<FoundTool | null | 'unsure'> {
  if (from !== 'PATH') {
    const there = await access(path, constants.F_OK).then(
      () => true,
      () => false,
    );
    if (!there) return null;
  }
  // the same name may be another program once the PATH is another
  const key = `${process.env.PATH ?? ''} ${path}`;
  const before = known.get(key);
  if (before) return { ...before, from };
  for (let ask = 0; ask < asksAtMost; ask++) {
    const run = await execa(path, ['-version'], { reject: false, timeout: 10_000, stdin: 'ignore' });
    if (run.isTerminated || run.timedOut) continue;
    if (run.failed) return null;
    const named = /version (\S+)/.exec(run.stdout)?.[1] ?? 'unknown';
    // a snapshot between releases has a count for a name, which says nothing: the year says how old it is
    const year = /Copyright \(c\) \d+-(\d{4})/.exec(run.stdout)?.[1];
    const version = named.startsWith('N-') && year !== undefined ? `${named} of ${year}` : named;
    known.set(key, { path, from, version });
    return { path, from, version };
  }
  return 'unsure';
}

/** Tools found before, by where they were looked for: each call would else start a program only to ask it its name. */
const found = new Map<string, FoundTool>();

/** The first candidate that runs, or null when there is none. Only a choice that nothing got in the way of is kept. */
export async function findMediaTool(tool: MediaTool): Promise<FoundTool | null> {
  const where = [tool, ...candidates(tool).map(({ path }) => path), process.env['PATH']].join('|');
  const before = found.get(where);
  if (before) return before;
  let sure = true;
  for (const { path, from } of candidates(tool)) {
    const running = path ? await tried(path, from) : null;
    if (running === 'unsure') sure = false;
    else if (running) {
      if (sure) found.set(where, running);
      return running;
    }
  }
  return null;
}

export async function describeMediaTools(): Promise<{ ffmpeg: FoundTool | null; ffprobe: FoundTool | null }> {
  const [ffmpeg, ffprobe] = await Promise.all([findMediaTool('ffmpeg'), findMediaTool('ffprobe')]);
  return { ffmpeg, ffprobe };
}
