import { execa } from 'execa';
import { failure, type Result, success } from '#core/host-contract/host-error';
import { filmStream } from '../media/film-stream';
import { findMediaTool } from '../media/find-media-tool';
import type { TimeBase } from '../media/probe-frame-times';
import { planesSize } from './planes';
import { timingOption } from './timing-option';

export interface FrameReaderOptions {
  readonly file: string;
  /** Film track from 1. */
  readonly track: number;
  /** Presentation times of the track's frames, sorted, in ticks of its own time base. */
  readonly times: readonly number[];
  readonly base: TimeBase;
  /** Frames wanted, ascending, each once; at least one. */
  readonly frames: readonly number[];
  /** Size the pictures are brought to; even. */
  readonly width: number;
  readonly height: number;
  readonly mirrored: boolean;
  readonly signal: AbortSignal;
}

/** Pictures of a clip one after another, exactly those asked for. */
export interface FrameReader {
  /** The planes of a frame; frames are asked for in order. They stay valid until the next is asked for. */
  read(frame: number): Promise<Result<Uint8Array>>;
  close(): Promise<void>;
}

/** Film decoded before the first frame wanted, so that frames leaning on an earlier key picture are whole, seconds. */
const leadIn = 1.5;

/** Our default: more single frames than this would make too long a list for ffmpeg. */
const longestList = 2500;

/** Whether so few of the frames between the first and the last are wanted that naming them saves work. */
const isSparse = (frames: readonly number[]): boolean =>
  frames.length <= longestList && frames.length < 0.7 * ((frames.at(-1) ?? 0) - (frames[0] ?? 0) + 1);

/** The frames that come out of the decoder: those wanted, or all between the first and the last of them. */
function framesToDecode(frames: readonly number[]): readonly number[] {
  if (isSparse(frames)) return frames;
  const first = frames[0] ?? 0;
  return Array.from({ length: (frames.at(-1) ?? first) - first + 1 }, (_, n) => first + n);
}

/**
 * Decodes with ffmpeg and keeps the pictures by their own timestamps, so a frame is the frame of the table whatever the
 * seeking landed on; that every one came is checked by counting.
 */
export async function openFrameReader(options: FrameReaderOptions): Promise<Result<FrameReader>> {
  const { file, track, times, base, width, height, signal } = options;
  const listed = framesToDecode(options.frames);
  const first = listed[0] ?? 0;
  const last = listed.at(-1) ?? first;
  const found = await findMediaTool('ffmpeg');
  if (!found) return failure('no-media-tool', { name: 'ffmpeg' });
  const from = times[first] ?? 0;
  const to = times[last] ?? from;
  const secondsOf = (ticks: number): number => (ticks * base.numerator) / base.denominator;
  const seek = secondsOf(from) - leadIn;
  const filters = [
    `select='${isSparse(options.frames) ? listed.map((frame) => `eq(pts,${times[frame] ?? -1})`).join('+') : `between(pts,${from},${to})`}'`,
    `scale=${width}:${height}:out_color_matrix=bt709:out_range=tv`,
    ...(options.mirrored ? ['hflip'] : []),
    'format=yuv420p',
  ];
  const args = [
    ...['-hide_banner', '-loglevel', 'error', '-nostdin', '-protocol_whitelist', 'file,pipe', '-copyts'],
    ...(seek > secondsOf(times[0] ?? 0)
      ? ['-noaccurate_seek', '-seek_timestamp', '1', '-ss', seek.toFixed(6)]
      : []),
    ...['-i', `file:${file}`, '-map', `0:${filmStream(track)}`, '-vf', filters.join(',')],
    ...[...timingOption(found.version), '-frames:v', String(listed.length), '-f', 'rawvideo', 'pipe:1'],
  ];
  const decoder = execa(found.path, args, {
    shell: false,
    stdin: 'ignore',
    stdout: 'pipe',
    stderr: 'pipe',
    encoding: 'buffer',
    buffer: { stdout: false, stderr: true },
    reject: false,
    cancelSignal: signal,
    forceKillAfterDelay: 2000,
  });
  // a stream nobody reads from at once is drained and its pictures lost: held until they are asked for
  decoder.stdout.pause();
  const chunks = decoder.stdout[Symbol.asyncIterator]() as AsyncIterator<Uint8Array>;
  const picture = new Uint8Array(planesSize(width, height));
  let rest: Uint8Array = new Uint8Array();
  let shown = -1;

  const readNext = async (): Promise<boolean> => {
    let filled = 0;
    while (filled < picture.length) {
      if (rest.length === 0) {
        const { value, done } = await chunks.next();
        if (done) return false;
        rest = value;
      }
      const part = rest.subarray(0, picture.length - filled);
      picture.set(part, filled);
      filled += part.length;
      rest = rest.subarray(part.length);
    }
    return true;
  };

  return success({
    async read(frame) {
      while ((listed[shown] ?? -1) < frame && shown < listed.length - 1) {
        const whole = await readNext().catch((problem: unknown) => {
          if (signal.aborted) return false;
          throw problem;
        });
        if (signal.aborted) return failure('cancelled');
        if (!whole) {
          const { stderr } = await decoder;
          const said = Buffer.from(stderr).toString('utf8').trim().split('\n').at(-1) ?? '';
          return failure('media-tool-failed', {
            name: found.path.split(/[/\\]/).at(-1) ?? 'ffmpeg',
            message:
              `frame ${(listed[shown + 1] ?? 0) + 1} could not be read. ${said.replace(/(?:[A-Za-z]:)?[/\\]\S*[/\\]/g, '')}`.slice(
                0,
                300,
              ),
          });
        }
        shown += 1;
      }
      return success(picture);
    },
    async close() {
      // a decoder whose pictures nobody takes never ends by itself
      decoder.stdout.destroy();
      decoder.kill();
      await decoder;
    },
  });
}
