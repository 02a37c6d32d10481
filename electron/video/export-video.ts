import { rm } from 'node:fs/promises';
import path from 'node:path';
import type { PairPart } from '#core/compare/pair-part';
import { pairPartOf } from '#core/compare/pair-part';
import { failure, type Result, success } from '#core/host-contract/host-error';
import type { VideoMade } from '#core/host-contract/operations/video-operations';
import type { ReadingKnowledge } from '#core/measures/compute-readings';
import type { Swim } from '#core/swim-file/swim-schema';
import { tableFromRecord } from '#core/timeline/frame-times-record';
import { sideCrops } from '#core/video/side-crops';
import { type VideoLayout, videoLayout } from '#core/video/video-layout';
import type { VideoPlan } from '#core/video/video-plan';
import { type VideoRun, videoRun } from '#core/video/video-run';
import { draftName } from '../disk/drafts';
import { fileFailure } from '../disk/file-errors';
import { linkUnderFreeName } from '../disk/free-name';
import { type FrameReader, openFrameReader } from '../media/frame-reader';
import type { ProbedTrack } from '../media/probe-tracks';
import { createPictureDrawer, type PictureDrawer } from './picture-drawer';
import { planesSize } from './planes';
import { openVideoEncoder, type Sound, type VideoEncoder, videoFormat } from './video-encoder';
import { hostJobsWords } from '#core/words/host-jobs';

/** One swim to be shown: its file, its clip on disk, and what is known of who swims. */
export interface VideoSource {
  readonly swim: Swim;
  readonly clip: string;
  readonly knowledge: ReadingKnowledge;
}

interface Options {
  /** As many as the plan has sides. */
  readonly sources: readonly VideoSource[];
  readonly plan: VideoPlan;
  /** Where the video goes, and a name nobody else uses for it while it is half made. */
  readonly folder: string;
  readonly tempId: string;
  readonly signal: AbortSignal;
  /** Part done, 0 to 1, or null while it can’t be told. */
  readonly report: (share: number | null, words?: string) => void;
}

/**
 * Makes a video: decodes exactly the frames the stages would show, lays body lines, events and words over them, puts the
 * score under them, and encodes. It bears its own name only once it is whole.
 */
export async function exportVideo(options: Options): Promise<Result<VideoMade>> {
  const { sources, plan, folder, tempId, signal, report } = options;
  report(null, hostJobsWords('lookingAtClips'));
  const parts = plan.sides.flatMap((side, index): PairPart[] => {
    const source = sources[index];
    if (!source) return [];
    const { clip } = source.swim;
    const clock = { table: tableFromRecord(clip.frameTimes), slowdown: clip.slowdown.factor };
    const last = clock.table.starts.length - 1;
    const stretch = { first: Math.min(side.stretch.first, last), last: Math.min(side.stretch.last, last) };
    return [pairPartOf(source.swim, source.knowledge, clock, stretch, side.lock)];
  });
  const run = videoRun(parts, plan);
  const layout = videoLayout(parts, plan);
  const sizes = decodedSizes(parts, plan, layout, run);
  const temp = path.join(folder, `.${draftName(tempId)}`);
  const readers: FrameReader[] = [];
  let unfinished: VideoEncoder | null = null;
  try {
    // asking the tools takes longer than many a short video: all are asked at once
    const [format, ...opened] = await Promise.all([
      videoFormat(),
      ...sources.map((source, index) => readerOf(source, run, index, sizes[index], plan, signal)),
    ]);
    for (const reader of opened) if (reader.ok) readers.push(reader.value);
    const lacking = [format, ...opened].find((each) => !each.ok);
    if (!format.ok) return format;
    if (lacking && !lacking.ok) return lacking;
    const encoder = await openVideoEncoder({
      file: temp,
      format: format.value,
      width: layout.width,
      height: layout.height,
      rate: plan.rate,
      sound: soundOf(plan, parts, sources, run, readers),
      signal,
    });
    if (!encoder.ok) return encoder;
    unfinished = encoder.value;
    const drawer = createPictureDrawer(parts, plan, layout, run);
    const drawn = await drawAll({ run, drawer, readers, sizes, signal, report }, encoder.value.write);
    if (!drawn.ok) return drawn;
    report(1, hostJobsWords('finishingFile'));
    const finished = await encoder.value.finish();
    unfinished = null;
    if (!finished.ok) return finished;
    const made = await linkUnderFreeName(folder, `${plan.name}.${format.value}`, temp);
    return success({ ...made, pictures: run.pictures, format: format.value });
  } catch (error) {
    if (signal.aborted) return failure('cancelled');
    if (error instanceof Error && 'code' in error) return fileFailure(error, plan.name, 'writing');
    throw error;
  } finally {
    await unfinished?.stop();
    for (const reader of readers) await reader.close();
    await rm(temp, { force: true });
  }
}

interface Size {
  readonly width: number;
  readonly height: number;
}

/**
 * How large each film is decoded: as its place in the video; where the picture comes closer to the swimmer, so much larger that the
 * closest has pixels enough, as far as the film has them.
 */
function decodedSizes(
  parts: readonly PairPart[],
  plan: VideoPlan,
  layout: VideoLayout,
  run: VideoRun,
): readonly Size[] {
  if (!plan.keepInView) return layout.pictures;
  const closest = parts.map(({ swim }) => swim.clip.width);
  for (let picture = 0; picture < run.pictures; picture++)
    sideCrops(parts, plan, layout, run.framesOf(picture)).forEach(({ width }, index) => {
      closest[index] = Math.min(closest[index] ?? width, width);
    });
  return parts.map(({ swim: { clip } }, index) => {
    const scale = Math.min(1, (layout.pictures[index]?.width ?? clip.width) / (closest[index] ?? clip.width));
    return { width: even(clip.width * scale), height: even(clip.height * scale) };
  });
}

const even = (value: number): number => Math.max(2, 2 * Math.round(value / 2));

async function readerOf(
  { swim, clip }: VideoSource,
  run: VideoRun,
  index: number,
  picture: Size | undefined,
  plan: VideoPlan,
  signal: AbortSignal,
): Promise<Result<FrameReader>> {
  if (!picture) throw new Error('a video has a picture for each of its swims');
  const { width, height } = picture;
  return openFrameReader({
    file: clip,
    clip: swim.clip,
    frames: wantedFrames(run, index),
    filters: (film) => [
      `scale=${width}:${height}${is709(film) ? '' : ':out_color_matrix=bt709:out_range=tv'}`,
      ...(plan.sides[index]?.mirrored ? ['hflip'] : []),
      'format=yuv420p',
    ],
    bytes: planesSize(width, height),
    signal,
  });
}

/**
 * Whether a film's colours are those of the video already. Untagged film of 720 lines and more is taken as BT.709, as
 * browsers take it; converting for nothing costs as much time as decoding does, and shifts colours.
 */
const is709 = ({ colours, fullRange, codedWidth, codedHeight }: ProbedTrack): boolean =>
  !fullRange && (colours === 'bt709' || (colours === null && Math.min(codedWidth, codedHeight) >= 720));

/** The frames of a swim that a video shows, ascending, each once. */
function wantedFrames(run: VideoRun, index: number): readonly number[] {
  const frames: number[] = [];
  for (let picture = 0; picture < run.pictures; picture++) {
    const frame = run.framesOf(picture)[index] ?? 0;
    if (frame !== frames.at(-1)) frames.push(frame);
  }
  return frames;
}

interface Making {
  readonly run: VideoRun;
  readonly drawer: PictureDrawer;
  readonly readers: readonly FrameReader[];
  /** Of the pictures they give. */
  readonly sizes: readonly Size[];
  readonly signal: AbortSignal;
  /** Part done, 0 to 1, or null while it can’t be told. */
  readonly report: (share: number | null, words?: string) => void;
}

async function drawAll(
  { run, drawer, readers, sizes, signal, report }: Making,
  write: (picture: Uint8Array) => Promise<Result<null>>,
): Promise<Result<null>> {
  let drawn: { readonly frames: readonly number[]; readonly bytes: Uint8Array } | null = null;
  for (let picture = 0; picture < run.pictures; picture++) {
    if (signal.aborted) return failure('cancelled');
    const frames = run.framesOf(picture);
    // in slow motion a moment is shown more than once, and looks the same each time
    if (!drawn || frames.some((frame, index) => frame !== drawn?.frames[index])) {
      drawer.begin();
      for (const [index, reader] of readers.entries()) {
        const read = await reader.read(frames[index] as number);
        if (!read.ok) return read;
        drawer.lay(index, { ...(sizes[index] ?? { width: 2, height: 2 }), bytes: read.value }, frames);
      }
      drawn = { frames, bytes: drawer.finish(frames) };
    }
    const written = await write(drawn.bytes);
    if (!written.ok) return written;
    report(
      (picture + 1) / run.pictures,
      hostJobsWords('picture', { picture: picture + 1, pictures: run.pictures }),
    );
  }
  return success(null);
}

/** The first film's sound, when it was asked for and runs at true speed. */
function soundOf(
  plan: VideoPlan,
  parts: readonly PairPart[],
  sources: readonly VideoSource[],
  run: VideoRun,
  readers: readonly FrameReader[],
): Sound | null {
  const [part] = parts;
  const [source] = sources;
  const [reader] = readers;
  const { sound, slow, mode } = plan;
  if (!sound || slow !== 1 || mode === 'cycle' || !part || !source || !reader) return null;
  if (part.side.clock.slowdown !== 1) return null;
  return { file: source.clip, from: reader.startsAt, seconds: run.pictures / plan.rate };
}
