import { type Result, success } from '#core/host-contract/host-error';
import { filmStream } from './film-stream';
import { type MediaRun, runMediaTool } from './run-media-tool';

/** Pictures looked at: a second of film; headers alone are often silent or wrong. */
const looked = 24;

/** Whether most of a film's first pictures are coded as two fields. */
export async function isInterlaced(
  file: string,
  track: number,
  options: MediaRun = {},
): Promise<Result<boolean>> {
  const run = await runMediaTool(
    'ffprobe',
    [
      ...['-v', 'error', '-select_streams', filmStream(track), '-read_intervals', `%+#${looked}`],
      ...['-show_entries', 'frame=interlaced_frame', '-of', 'compact=p=1', '-i', `file:${file}`],
    ],
    options,
  );
  if (!run.ok) return run;
  const marks = [...run.value.matchAll(/^frame\|interlaced_frame=([01])/gm)].map((found) => found[1]);
  return success(marks.filter((mark) => mark === '1').length > marks.length / 2);
}
