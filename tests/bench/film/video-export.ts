import { mkdtemp, readFile, rm, stat, writeFile } from 'node:fs/promises';
import { cpus, loadavg, tmpdir } from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { execa } from 'execa';
import { pairPartOf } from '#core/compare/pair-part';
import { type EventMark, type Posture, plainMark, type Swim } from '#core/swim-file/swim-schema';
import { recordFromTable, tableFromRecord } from '#core/timeline/frame-times-record';
import { videoLayout } from '#core/video/video-layout';
import type { VideoPlan } from '#core/video/video-plan';
import { videoRun } from '#core/video/video-run';
import { findMediaTool } from '#electron/media/find-media-tool';
import { probeFrameTimes } from '#electron/media/probe-frame-times';
import { probeTracks } from '#electron/media/probe-tracks';
import { exportVideo, type VideoSource } from '#electron/video/export-video';
import { encodeOptions } from '#electron/video/video-encoder';
import { type MadeClip, makeClip } from '../../browser/harness/make-clips';
import { aSwim } from '../../shared-core/swim-file/a-swim';

/**
 * Measures the making of videos against ffmpeg alone decoding, scaling, stacking and encoding the same pictures with the
 * same encoder settings, turn about in one run. Run with tsx; the table goes to docs/performance-tables.md.
 */
const rounds = Number(process.argv[2] ?? 3);

const clip = (name: string, rate: number): MadeClip => ({
  name,
  width: 1920,
  height: 1080,
  rate,
  pictures: Math.round(6 * rate),
  extension: 'mp4',
  encode: ['-c:v', 'libx264', '-preset', 'veryfast', '-crf', '21', '-x264-params', 'keyint=60:bframes=2'],
});
const clips = [clip('bench-video-60', 60), clip('bench-video-120', 120)];

/** Marks as dense as a coach's: two kicks a second with hands, and a body line on every third frame. */
function marked(frames: number, rate: number): Pick<Swim, 'events' | 'postures'> {
  const kinds = ['entry', 'kick-top', 'kick-bottom', 'exit'] as const;
  const events = Array.from({ length: Math.floor((frames / rate) * 4) }, (_, i): EventMark => {
    const frame = Math.round((i * rate) / 4);
    return { ...plainMark, id: `e${i}`, kind: kinds[i % 4] ?? 'entry', frame };
  });
  const names = ['fingertip', 'wrist', 'elbow', 'shoulder', 'hip', 'knee', 'ankle', 'toe'] as const;
  const postures = Array.from({ length: Math.floor(frames / 3) }, (_, i): Posture => {
    const points: Posture['points'] = {};
    names.forEach((name, n) => {
      points[name] = { x: 500 + 90 * n + i, y: 540 + 60 * Math.sin(i / 9 + n / 2) };
    });
    return { frame: 3 * i, points, hidden: [] };
  });
  return { events, postures };
}

async function source(made: MadeClip): Promise<VideoSource> {
  const file = await makeClip(made);
  if (!file) throw new Error('no ffmpeg here to make the clips with');
  const tracks = await probeTracks(file);
  const base = tracks.ok ? tracks.value.tracks[0]?.base : undefined;
  const probed = base && (await probeFrameTimes(file, 1, base));
  if (!probed?.ok) throw new Error('the clip can not be probed');
  const table = probed.value;
  const plain = aSwim();
  const swim: Swim = {
    ...plain,
    clip: {
      ...plain.clip,
      width: made.width,
      height: made.height,
      frameTimes: recordFromTable(table),
    },
    ...marked(table.starts.length, made.rate),
  };
  return { swim, clip: file, knowledge: { swimmer: null, markingError: null } };
}

function planOf(sources: readonly VideoSource[], slow: number): VideoPlan {
  return {
    sides: sources.map(({ swim }) => ({
      swimId: swim.id,
      stretch: { first: 0, last: tableFromRecord(swim.clip.frameTimes).starts.length - 1 },
      lock: { on: 'frame', frame: 0 },
      frame: 0,
      mirrored: false,
      title: 'Invented swimmer · butterfly, steady',
    })),
    mode: 'time',
    lead: 0,
    seconds: 2,
    slow,
    rate: 30,
    width: 1920,
    sameLength: false,
    keepInView: false,
    lay: null,
    show: { bodyLine: true, angles: true, score: true, flashes: true, facts: true },
    caption: 'Look at the second kick',
    sound: false,
    name: 'bench',
  };
}

const folder = await mkdtemp(path.join(tmpdir(), 'submark-bench-'));
const ffmpeg = await findMediaTool('ffmpeg');
if (!ffmpeg) throw new Error('no ffmpeg here');

const timed = async (work: () => Promise<void>): Promise<number> => {
  const began = performance.now();
  await work();
  return (performance.now() - began) / 1000;
};

/** ffmpeg alone: the same stretch at the same speed and rate, scaled and stacked to the same size, encoded alike. */
async function alone(
  sources: readonly VideoSource[],
  plan: VideoPlan,
): Promise<{ seconds: number; pictures: number }> {
  const parts = sources.map(({ swim, knowledge }, i) =>
    pairPartOf(
      swim,
      knowledge,
      { table: tableFromRecord(swim.clip.frameTimes), slowdown: 1 },
      plan.sides[i]?.stretch ?? { first: 0, last: 1 },
      { on: 'frame', frame: 0 },
    ),
  );
  const layout = videoLayout(parts, plan);
  const chains = layout.pictures.map(
    ({ width, height }, i) =>
      `[${i}:v]setpts=(PTS-STARTPTS)*${plan.slow},fps=${plan.rate},scale=${width}:${height}[v${i}]`,
  );
  const stack = sources.length > 1 ? '[v0][v1]hstack,' : '[v0]';
  const filter = `${chains.join(';')};${stack}pad=${layout.width}:${layout.height}`;
  const file = path.join(folder, 'alone.mp4');
  const pictures = videoRun(parts, plan).pictures;
  const seconds = await timed(async () => {
    await execa(ffmpeg?.path ?? 'ffmpeg', [
      ...['-v', 'error', '-y', ...sources.flatMap(({ clip: film }) => ['-i', film])],
      ...['-filter_complex', filter, '-frames:v', String(pictures), '-an'],
      ...[...encodeOptions('mp4', plan.rate), '-f', 'mp4', file],
    ]);
  });
  await rm(file);
  return { seconds, pictures };
}

async function ours(
  sources: readonly VideoSource[],
  plan: VideoPlan,
): Promise<{ seconds: number; bytes: number }> {
  let made = '';
  const seconds = await timed(async () => {
    const result = await exportVideo({
      sources,
      plan,
      folder,
      tempId: 'bench',
      signal: new AbortController().signal,
      report: () => undefined,
    });
    if (!result.ok) throw new Error(JSON.stringify(result.error));
    made = result.value.path;
  });
  const { size } = await stat(made);
  await rm(made);
  return { seconds, bytes: size };
}

const median = (values: readonly number[]): number =>
  [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)] ?? Number.NaN;

const [first, second] = [await source(clips[0] as MadeClip), await source(clips[1] as MadeClip)];
const rows: string[] = [];
try {
  for (const [what, sources, slow] of [
    ['one swim, 1080p60, true speed', [first], 1],
    ['one swim, 1080p60, ¼ speed', [first], 4],
    ['pair, 1080p60 and 1080p120, true speed', [first, second], 1],
    ['pair, 1080p60 and 1080p120, ¼ speed', [first, second], 4],
  ] as const) {
    const plan = planOf(sources, slow);
    const times: { ours: number[]; alone: number[] } = { ours: [], alone: [] };
    let pictures = 0;
    for (let round = 0; round < rounds; round++) {
      const other = await alone(sources, plan);
      pictures = other.pictures;
      times.alone.push(other.seconds);
      times.ours.push((await ours(sources, plan)).seconds);
    }
    const ratio = median(times.ours.map((each, i) => each / (times.alone[i] ?? Number.NaN)));
    const row = `| ${what} | ${pictures} | ${median(times.ours).toFixed(1)} | ${median(times.alone).toFixed(1)} | ${ratio.toFixed(2)} | ${(pictures / median(times.ours)).toFixed(0)} |`;
    console.log(row);
    rows.push(row);
  }
} finally {
  await rm(folder, { recursive: true, force: true });
}

const file = fileURLToPath(new URL('../../../docs/performance-tables.md', import.meta.url));
const before = await readFile(file, 'utf8');
const [begin, end] = ['<!-- video: written by tests/bench/film/video-export.ts -->', '<!-- /video -->'];
const text = [
  begin,
  '## Making a video',
  '',
  `Seconds to make a video of 2 true seconds with body lines, angles, score, event names and words, against ffmpeg alone decoding, scaling, stacking and encoding as many pictures of the same size with the same encoder settings; turn about, median of ${rounds} rounds, the ratio taken round by round. ${cpus().length} processor cores, load ${loadavg()[0]?.toFixed(1)} at the end. Our target is a ratio of at most 1.5. What is asked of the tools before the first picture (about six calls) weighs on the short ones, the more the busier the machine.`,
  '',
  '| video | pictures | ours, s | ffmpeg alone, s | ratio | pictures a second |',
  '| --- | --- | --- | --- | --- | --- |',
  ...rows,
  end,
].join('\n');
const [from, to] = [before.indexOf(begin), before.indexOf(end)];
await writeFile(
  file,
  from >= 0 && to > from
    ? before.slice(0, from) + text + before.slice(to + end.length)
    : `${before.trimEnd()}\n\n${text}\n`,
);
