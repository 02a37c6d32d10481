import { execa } from 'execa';
import { failure, type Result, success } from '#core/host-contract/host-error';
import { findMediaTool, type MediaTool } from './find-media-tool';

export interface MediaRun {
  readonly signal?: AbortSignal;
  /** Our default: ten minutes; a tool that hangs on a hostile file must not hang for ever. */
  readonly timeoutMs?: number;
  /** Most characters kept of each output; the run is ended when stdout has more. Our default: 64 million. */
  readonly maxOutput?: number;
}

/** Last sensible line of what a tool complained about, without the paths in it. */
function complaint(stderr: string): string {
  const line = stderr
    .split('\n')
    .map((each) => each.trim())
    .filter((each) => each !== '')
    .at(-1);
  return (line ?? 'it said nothing').replace(/(?:[A-Za-z]:)?[/\\]\S*[/\\]/g, '').slice(0, 300);
}

/**
 * Runs ffmpeg or ffprobe without a shell and gives its standard output. Files are its only source: no network
 * protocol may be opened by anything inside a clip. Ended by time, by too much output, or by the signal.
 */
export async function runMediaTool(
  tool: MediaTool,
  args: readonly string[],
  { signal, timeoutMs = 600_000, maxOutput = 64_000_000 }: MediaRun = {},
): Promise<Result<string>> {
  if (signal?.aborted) return failure('cancelled');
  const found = await findMediaTool(tool);
  if (!found) return failure('no-media-tool', { name: tool });
  const run = await execa(found.path, ['-hide_banner', '-protocol_whitelist', 'file,pipe', ...args], {
    shell: false,
    stdin: 'ignore',
    reject: false,
    timeout: timeoutMs,
    maxBuffer: maxOutput,
    forceKillAfterDelay: 2000,
    ...(signal ? { cancelSignal: signal } : {}),
  });
  if (!run.failed) return success(run.stdout);
  if (run.isCanceled) return failure('cancelled');
  if (run.timedOut) return failure('timed-out', { name: tool });
  if (run.isMaxBuffer) return failure('too-large', { name: `What ${tool} said` });
  return failure('media-tool-failed', { name: tool, message: complaint(run.stderr) });
}
