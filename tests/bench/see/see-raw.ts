import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { execa } from 'execa';
import type { BodySighting } from '#core/see/body-sighting';
import type { SeenPicture } from '#core/see/cut-square';
import type { PoseNetworks } from '#core/see/find-swimmers';
import { followSwimmer } from '#core/see/follow-swimmer';
import { findMediaTool } from '#electron/media/find-media-tool';
import type { SeeClip } from './see-clips';

const cache = fileURLToPath(new URL('../../../.cache/see/', import.meta.url));

/** The longest side of what is looked at, as in the app. */
const longest = 1280;

/** What was seen of a clip, picture by picture, and how long it took. */
export interface RawSeen {
  readonly bodies: readonly (BodySighting | null)[];
  readonly secondsEach: number;
}

/** Every picture of a clip as the app would look at it, one after the other. */
async function* picturesOf({ file, width, height, filter }: SeeClip): AsyncGenerator<SeenPicture> {
  const tool = await findMediaTool('ffmpeg');
  if (!tool) throw new Error('needs ffmpeg');
  const step = Math.max(1, Math.max(width, height) / longest);
  const [w, h] = [Math.round(width / step), Math.round(height / step)];
  const filters = [...(filter ? [filter] : []), `scale=${w}:${h}:flags=area`].join(',');
  const run = execa(
    tool.path,
    [
      ...['-v', 'error', '-i', file, '-vf', filters, '-fps_mode', 'passthrough'],
      ...['-f', 'rawvideo', '-pix_fmt', 'rgba', '-'],
    ],
    { encoding: 'buffer', buffer: false },
  );
  const size = 4 * w * h;
  let rest: Buffer = Buffer.alloc(0);
  for await (const part of run.stdout as AsyncIterable<Buffer>) {
    rest = rest.length > 0 ? Buffer.concat([rest, part]) : part;
    while (rest.length >= size) {
      yield { width: w, height: h, rgba: new Uint8Array(rest.subarray(0, size)), step };
      rest = rest.subarray(size);
    }
  }
  await run;
}

/** What the networks see of a clip; kept, as it takes a second for a few pictures. */
export async function rawSeen(
  clip: SeeClip,
  networks: () => Promise<PoseNetworks>,
  again: boolean,
): Promise<RawSeen> {
  const kept = `${cache}${clip.name}.json`;
  if (!again && existsSync(kept)) return JSON.parse(readFileSync(kept, 'utf8')) as RawSeen;
  const follower = followSwimmer(await networks(), null);
  const bodies: (BodySighting | null)[] = [];
  let spent = 0;
  for await (const picture of picturesOf(clip)) {
    const began = performance.now();
    const look = await follower.look(picture, clip.truth.realTimes[bodies.length] ?? 0);
    spent += performance.now() - began;
    bodies.push(look.kind === 'seen' ? look.body : null);
  }
  const seen: RawSeen = { bodies, secondsEach: spent / 1000 / Math.max(1, bodies.length) };
  mkdirSync(cache, { recursive: true });
  writeFileSync(kept, JSON.stringify(seen));
  return seen;
}
