import { failure, type Result, success } from '#core/host-contract/host-error';
import { type MediaRun, runMediaTool } from './run-media-tool';

/** The pictures of a file's first film track as ffprobe sees them: an outside check of our own frame table. */
export interface ProbedFrames {
  /** Ticks of the track's time base a second; null when the base is no whole number of them. */
  readonly ticksPerSecond: number | null;
  /** Sorted presentation timestamps in ticks, packets marked to be discarded left out. */
  readonly ticks: readonly number[];
}

interface ProbeAnswer {
  readonly packets?: readonly { readonly pts?: number; readonly flags?: string }[];
  readonly streams?: readonly { readonly time_base?: string }[];
}

export async function probeFrameTimes(file: string, options: MediaRun = {}): Promise<Result<ProbedFrames>> {
  const asked = ['-v', 'error', '-select_streams', 'v:0', '-of', 'json'];
  const entries = ['-show_entries', 'packet=pts,flags:stream=time_base'];
  // "file:" keeps a name such as "http:x" or "-i" from being read as an address or an option
  const run = await runMediaTool('ffprobe', [...asked, ...entries, '-i', `file:${file}`], options);
  if (!run.ok) return run;
  const answer = JSON.parse(run.value) as ProbeAnswer;
  const base = /^(\d+)\/(\d+)$/.exec(answer.streams?.[0]?.time_base ?? '');
  if (!base) return failure('no-video-track', { name: 'The file' });
  const perSecond = Number(base[2]) / Number(base[1]);
  const ticks = (answer.packets ?? [])
    .filter((each) => each.pts !== undefined && !each.flags?.includes('D'))
    .map((each) => each.pts as number)
    .sort((a, b) => a - b);
  return success({ ticksPerSecond: Number.isInteger(perSecond) ? perSecond : null, ticks });
}
