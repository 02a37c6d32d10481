import { failure, type HostErrorCode, type Result } from '#core/host-contract/host-error';
import type { MediaTool } from './find-media-tool';

/** What the tools say, and what it means. Looked for in everything they said, the weightiest first. */
const meanings: readonly (readonly [RegExp, HostErrorCode])[] = [
  [/No space left on device/i, 'disk-full'],
  [/Read-only file system/i, 'read-only'],
  [/No such file or directory/i, 'clip-missing'],
  [/Permission denied|Input\/output error/i, 'cannot-read'],
  [/partial file|Truncat/i, 'truncated'],
  [/matches no streams|does not contain any stream/i, 'no-video-track'],
];

/** What a tool that gave up complained about, as an error a coach can read. */
export function toolComplaint(tool: MediaTool, stderr: string): Result<never> {
  const message = lastLine(stderr);
  const code = meanings.find(([pattern]) => pattern.test(stderr))?.[1] ?? 'media-tool-failed';
  return failure(code, { tool, message });
}

/** The last sensible line, without the paths in it. */
function lastLine(stderr: string): string {
  const line = stderr
    .split('\n')
    .map((each) => each.trim())
    .filter((each) => each !== '')
    .at(-1);
  return (line ?? 'it said nothing').replace(/(?:[A-Za-z]:)?[/\\]\S*[/\\]/g, '').slice(0, 300);
}
