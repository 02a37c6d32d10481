import { constants, getPriority, setPriority } from 'node:os';
import type { Readable } from 'node:stream';
import { execa } from 'execa';
import { failure, type Result, success } from '#core/host-contract/host-error';
import { findMediaTool, type MediaTool } from './find-media-tool';
import { noteTool } from './running-tools';
import { toolComplaint } from './tool-complaint';
import { hostJobsWords } from '#core/words/host-jobs';

export interface MediaRun {
  readonly signal?: AbortSignal;
  /** Our default: ten minutes; a tool that hangs on a hostile file must not hang for ever. */
  readonly timeoutMs?: number;
  /** Most characters kept of each output; the run is ended when stdout has more. Our default: 64 million. */
  readonly maxOutput?: number;
  /** Each line of standard output as it comes. */
  readonly onLine?: (line: string) => void;
  /** Each line of what it complains about, as it comes. */
  readonly onComplaint?: (line: string) => void;
  /** Runs behind everything else, so that review goes on meanwhile. */
  readonly inBackground?: boolean;
  /** What the tool reads on its standard input; without it there is none. */
  readonly input?: Readable;
}

/**
 * Runs ffmpeg or ffprobe without a shell and gives its standard output. Files are its only source: no network
 * protocol may be opened by anything inside a clip. Ended by time, by too much output, or by the signal.
 */
export async function runMediaTool(
  tool: MediaTool,
  args: readonly string[],
  {
    signal,
    timeoutMs = 600_000,
    maxOutput = 64_000_000,
    onLine,
    onComplaint,
    inBackground = false,
    input,
  }: MediaRun = {},
): Promise<Result<string>> {
  if (signal?.aborted) return failure('cancelled');
  const found = await findMediaTool(tool);
  if (!found) return failure('no-media-tool', { name: tool });
  const running = execa(found.path, ['-hide_banner', '-protocol_whitelist', 'file,pipe', ...args], {
    shell: false,
    ...(input ? { input } : { stdin: 'ignore' as const }),
    reject: false,
    timeout: timeoutMs,
    maxBuffer: maxOutput,
    forceKillAfterDelay: 2000,
    ...(signal ? { cancelSignal: signal } : {}),
  });
  noteTool(running);
  if (inBackground) stepBack(running.pid);
  if (onLine) hearLines(running.stdout, onLine);
  if (onComplaint) hearLines(running.stderr, onComplaint);
  const run = await running;
  if (!run.failed) return success(run.stdout);
  if (run.isCanceled) return failure('cancelled');
  if (run.timedOut) return failure('timed-out', { name: tool });
  if (run.isMaxBuffer) return failure('too-large', { name: hostJobsWords('whatSaid', { tool }) });
  return toolComplaint(tool, run.stderr);
}

function stepBack(pid: number | undefined): void {
  if (pid === undefined) return;
  try {
    // never before ourselves, who may have been put behind everything else: marks are saved by us
    setPriority(pid, Math.max(getPriority(), constants.priority.PRIORITY_BELOW_NORMAL));
  } catch (error) {
    // it has ended already, or the system does not let us: it then runs like any other
    if ((error as NodeJS.ErrnoException).code !== 'ERR_SYSTEM_ERROR') throw error;
  }
}

function hearLines(output: NodeJS.ReadableStream, hear: (line: string) => void): void {
  let rest = '';
  output.on('data', (chunk: Buffer | string) => {
    const lines = (rest + chunk.toString()).split('\n');
    rest = lines.pop() ?? '';
    for (const line of lines) hear(line);
  });
}
