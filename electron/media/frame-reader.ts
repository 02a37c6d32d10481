import { execa } from 'execa';
import { failure, type Result, success } from '#core/host-contract/host-error';
import { findMediaTool } from './find-media-tool';
import { knowFilm, type WantedClip } from './known-film';
import type { ProbedTrack } from './probe-tracks';
import { noteTool } from './running-tools';
import { timingOption } from './timing-option';
import { wantedPictures } from './wanted-pictures';

export interface FrameReaderOptions {
  readonly file: string;
  readonly clip: WantedClip;
  /** Frames wanted, ascending, each once; at least one. */
  readonly frames: readonly number[];
  /** What is done to each of them; the last names the kind of pixels. */
  readonly filters: (film: ProbedTrack) => readonly string[];
  /** Bytes of a picture as it comes out. */
  readonly bytes: number;
  readonly signal?: AbortSignal;
}

/** Pictures of a clip one after another, exactly those asked for. */
export interface FrameReader {
  /** A frame's bytes; frames are asked for in order. They stay valid until the next is asked for. */
  read(frame: number): Promise<Result<Uint8Array>>;
  /** When the first frame asked for is shown, in seconds of the container's own clock. */
  readonly startsAt: number;
  close(): Promise<void>;
}

/** Decodes with ffmpeg: no picture is held but the one asked for, and that every one came is checked by counting. */
export async function openFrameReader(options: FrameReaderOptions): Promise<Result<FrameReader>> {
  const { file, clip, frames, filters, bytes, signal } = options;
  const found = await findMediaTool('ffmpeg');
  if (!found) return failure('no-media-tool', { name: 'ffmpeg' });
  const known = await knowFilm(file, clip, signal ? { signal } : {});
  if (!known.ok) return known;
  const { film } = known.value;
  const { input, listed, filters: choosing, startsAt } = wantedPictures(known.value, frames);
  const args = [
    ...['-hide_banner', '-loglevel', 'error', '-nostdin', '-protocol_whitelist', 'file,pipe', ...input],
    ...['-vf', [...choosing, ...filters(film)].join(','), ...timingOption(found.version)],
    ...['-frames:v', String(listed.length), '-f', 'rawvideo', 'pipe:1'],
  ];
  const decoder = execa(found.path, args, {
    shell: false,
    stdin: 'ignore',
    stdout: 'pipe',
    stderr: 'pipe',
    encoding: 'buffer',
    buffer: { stdout: false, stderr: true },
    reject: false,
    forceKillAfterDelay: 2000,
    ...(signal ? { cancelSignal: signal } : {}),
  });
  noteTool(decoder);
  // a stream nobody reads from at once is drained and its pictures lost: held until they are asked for
  decoder.stdout.pause();
  const chunks = decoder.stdout[Symbol.asyncIterator]() as AsyncIterator<Uint8Array>;
  const picture = new Uint8Array(bytes);
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
    startsAt,
    async read(frame) {
      while ((listed[shown] ?? -1) < frame && shown < listed.length - 1) {
        const whole = await readNext().catch((problem: unknown) => {
          if (signal?.aborted) return false;
          throw problem;
        });
        if (signal?.aborted) return failure('cancelled');
        if (!whole) {
          const { stderr } = await decoder;
          const said = Buffer.from(stderr).toString('utf8').trim().split('\n').at(-1) ?? '';
          return failure('media-tool-failed', {
            name: found.path.split(/[/\\]/).at(-1) ?? 'ffmpeg',
            message:
              `frame ${(listed[shown + 1] as number) + 1} could not be read. ${said.replace(/(?:[A-Za-z]:)?[/\\]\S*[/\\]/g, '')}`.slice(
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
