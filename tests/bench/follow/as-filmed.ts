import { execa } from 'execa';
import { findMediaTool } from '#electron/media/find-media-tool';
import { normal, seeded } from '../../../sample-clips/model/seeded';

/** How one film is made to look as if it had been filmed; shares of full strength, our own figures. */
export interface FilmedLook {
  readonly name: string;
  readonly seed: number;
  /** Displacement by moving water, share of the picture's width. */
  readonly turbulence: number;
  /** Light running over everything, share of brightness. */
  readonly caustics: number;
  /** Share of a picture's neighbours in it: the shutter stays open. */
  readonly shutter: number;
  /** What murky water takes of contrast. */
  readonly haze: number;
  /** Standard deviation of a pixel's noise, of 255. */
  readonly noise: number;
  /** What is left of colour: skin and suit stand out less. */
  readonly colour: number;
  readonly crf: number;
}

/** Clear water and a good camera, a usual pool, and a phone in murk; and a dim pool with a noisy camera, on which nothing was set. */
export const filmedLooks: readonly FilmedLook[] = [
  {
    name: 'clear',
    seed: 1,
    turbulence: 0.0006,
    caustics: 0.1,
    shutter: 0.2,
    haze: 0.15,
    noise: 3,
    colour: 0.9,
    crf: 24,
  },
  {
    name: 'usual',
    seed: 2,
    turbulence: 0.0012,
    caustics: 0.2,
    shutter: 0.35,
    haze: 0.3,
    noise: 5,
    colour: 0.7,
    crf: 29,
  },
  {
    name: 'murky',
    seed: 3,
    turbulence: 0.0018,
    caustics: 0.28,
    shutter: 0.5,
    haze: 0.5,
    noise: 7,
    colour: 0.5,
    crf: 33,
  },
  {
    name: 'dim',
    seed: 7,
    turbulence: 0.0009,
    caustics: 0.1,
    shutter: 0.6,
    haze: 0.4,
    noise: 9,
    colour: 0.4,
    crf: 27,
  },
];

interface Waves {
  at(x: number, y: number, time: number): number;
}

/** A few sine waves of different ways, lengths and paces, summing to about −1 … 1. */
function waves(seed: number, shortest: number, pace: number): Waves {
  const random = seeded(seed);
  const parts = Array.from({ length: 5 }, () => {
    const way = 2 * Math.PI * random();
    const length = shortest * (1 + 2 * random());
    return {
      x: (2 * Math.PI * Math.cos(way)) / length,
      y: (2 * Math.PI * Math.sin(way)) / length,
      t: 2 * Math.PI * pace * (0.5 + random()),
      phase: 2 * Math.PI * random(),
    };
  });
  return {
    at: (x, y, time) =>
      parts.reduce((sum, part) => sum + Math.sin(part.x * x + part.y * y + part.t * time + part.phase), 0) /
      parts.length,
  };
}

/** Every picture of a clip as planes of I420, `count` of them from the first. */
export async function planesOf(file: string, count: number): Promise<Buffer> {
  const tool = await findMediaTool('ffmpeg');
  if (!tool) throw new Error('needs ffmpeg');
  const { stdout } = await execa(
    tool.path,
    [
      ...['-v', 'error', '-i', file, '-frames:v', String(count)],
      ...['-fps_mode', 'passthrough', '-f', 'rawvideo', '-pix_fmt', 'yuv420p', '-'],
    ],
    { encoding: 'buffer', maxBuffer: 4e9 },
  );
  return Buffer.from(stdout);
}

/**
 * The same swim as a camera under water shows it: seen through moving water, under running light, with an open shutter, in
 * haze, with noise and less colour, coded hard. Points stay true to a fraction of the turbulence.
 */
export async function asFilmed(
  clean: Buffer,
  width: number,
  height: number,
  rate: number,
  look: FilmedLook,
): Promise<Buffer> {
  const size = (width * height * 3) / 2;
  const count = Math.floor(clean.length / size);
  const out = Buffer.alloc(count * size);
  const [across, down] = [waves(10 * look.seed, width / 9, 0.9), waves(10 * look.seed + 1, width / 9, 0.9)];
  const light = waves(10 * look.seed + 2, width / 16, 0.7);
  const random = seeded(1000 + look.seed);
  const grain = Int8Array.from({ length: 65_536 }, () => Math.round(look.noise * normal(random)));
  // fields are smooth: worked out every eighth pixel
  const cell = 8;
  const columns = Math.ceil(width / cell) + 1;
  const rows = Math.ceil(height / cell) + 1;
  for (let frame = 0; frame < count; frame++) {
    const time = frame / rate;
    const fields = [across, down, light].map((each, which) =>
      Float32Array.from({ length: columns * rows }, (_, i) => {
        const value = each.at((i % columns) * cell, Math.floor(i / columns) * cell, time);
        // running light is thin bright lines
        return which === 2 ? (1 - Math.abs(2 * value)) ** 2 - 0.4 : value * look.turbulence * width * 2;
      }),
    );
    const picture = (at: number): Buffer => {
      const from = Math.max(0, Math.min(count - 1, at)) * size;
      return clean.subarray(from, from + size);
    };
    const open = openShutter(picture(frame - 1), picture(frame), picture(frame + 1), look.shutter);
    const start = Math.floor(65_536 * random());
    let offset = 0;
    for (const [plane, w, h, step] of [
      [0, width, height, 1],
      [1, width / 2, height / 2, 2],
      [2, width / 2, height / 2, 2],
    ] as const) {
      for (let y = 0; y < h; y++)
        for (let x = 0; x < w; x++) {
          const i =
            Math.min(rows - 1, Math.floor((y * step) / cell)) * columns + Math.floor((x * step) / cell);
          const fx = Math.max(0, Math.min(w - 1.001, x + (fields[0]?.[i] ?? 0) / step));
          const fy = Math.max(0, Math.min(h - 1.001, y + (fields[1]?.[i] ?? 0) / step));
          const [ix, iy] = [Math.floor(fx), Math.floor(fy)];
          const [sx, sy] = [fx - ix, fy - iy];
          const at = offset + iy * w + ix;
          const seen =
            (1 - sy) * ((1 - sx) * (open[at] ?? 0) + sx * (open[at + 1] ?? 0)) +
            sy * ((1 - sx) * (open[at + w] ?? 0) + sx * (open[at + w + 1] ?? 0));
          const shown =
            plane === 0
              ? ((1 - look.haze) * seen + look.haze * 118) * (1 + look.caustics * (fields[2]?.[i] ?? 0)) +
                (grain[(start + y * w + x * 7) & 65_535] ?? 0)
              : 128 + look.colour * (seen - 128);
          out[frame * size + offset + y * w + x] = Math.max(0, Math.min(255, Math.round(shown)));
        }
      offset += w * h;
    }
  }
  return codedHard(out, width, height, rate, look.crf);
}

/** A picture with a share of its neighbours in it. */
function openShutter(before: Buffer, now: Buffer, after: Buffer, share: number): Float32Array {
  const out = new Float32Array(now.length);
  for (let i = 0; i < out.length; i++)
    out[i] = (1 - share) * (now[i] ?? 0) + (share / 2) * ((before[i] ?? 0) + (after[i] ?? 0));
  return out;
}

/** Coded as a camera codes, and decoded again. */
async function codedHard(
  planes: Buffer,
  width: number,
  height: number,
  rate: number,
  crf: number,
): Promise<Buffer> {
  const tool = await findMediaTool('ffmpeg');
  if (!tool) throw new Error('needs ffmpeg');
  const raw = ['-f', 'rawvideo', '-pix_fmt', 'yuv420p', '-s', `${width}x${height}`, '-r', String(rate)];
  const { stdout: coded } = await execa(
    tool.path,
    [
      ...['-v', 'error', ...raw, '-i', '-'],
      ...['-c:v', 'libx264', '-preset', 'veryfast', '-crf', String(crf), '-f', 'matroska', '-'],
    ],
    { input: planes, encoding: 'buffer', maxBuffer: 4e9 },
  );
  const { stdout } = await execa(
    tool.path,
    ['-v', 'error', '-i', '-', '-f', 'rawvideo', '-pix_fmt', 'yuv420p', '-'],
    { input: coded, encoding: 'buffer', maxBuffer: 4e9 },
  );
  return Buffer.from(stdout);
}
