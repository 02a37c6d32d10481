import { open, readFile, rm } from 'node:fs/promises';
import { failure, type Result, success } from '#core/host-contract/host-error';
import type { HostFilm } from '#core/host-contract/operations/media-operations';
import { cameraXmlRates, cameraXmlWithin } from '#core/timeline/camera-xml';
import { slowdownFromCameraXml, slowdownFromTags } from '#core/timeline/capture-rate';
import { isMatroskaCut } from '#core/timeline/container-name';
import { recordFromTable } from '#core/timeline/frame-times-record';
import type { FrameTable } from '#core/timeline/frame-table';
import { usualRate } from '#core/timeline/picture-order';
import { filmStream } from './film-stream';
import { isInterlaced } from './is-interlaced';
import { framesToTheEnd } from './end-of-film';
import { type KnownFilm, knownFilm } from './known-film';
import { type ListedFilm, listFilm } from './probe-frame-times';
import { type ProbedTrack, probeTracks } from './probe-tracks';
import { runMediaTool } from './run-media-tool';
import { canBeginAnywhere } from './wanted-pictures';
import { hostJobsWords } from '#core/words/host-jobs';

interface Look {
  readonly file: string;
  /** Film track from 1; null: the first. */
  readonly track: number | null;
  /** A path that may be written for a moment. */
  readonly scratch: string;
  readonly signal: AbortSignal;
  readonly report: (share: number | null, words: string) => void;
}

/** What a film is, told by ffprobe: for files the window can't read. Reads the file once, decodes a second of it. */
export async function lookAtFilm({ file, track, scratch, signal, report }: Look): Promise<Result<HostFilm>> {
  report(null, hostJobsWords('readingWhatFile'));
  const probed = await probeTracks(file, { signal });
  if (!probed.ok) return probed;
  const number = track ?? 1;
  const chosen = probed.value.tracks[number - 1];
  if (!chosen) return failure('no-video-track');
  if (!chosen.isKnown) return failure('not-decodable', { codec: chosen.codec });
  report(null, hostJobsWords('findingEveryFrame'));
  const listed = await listFilm(file, number, chosen.base, { signal, fieldSets: chosen.fieldSets });
  if (!listed.ok) return listed;
  const fields = await isInterlaced(file, number, { signal });
  if (!fields.ok) return fields;
  const picture =
    (await pictureAt((chosen.seconds ?? 0) / 2, file, number, chosen, scratch, signal)) ??
    (await pictureAt(0, file, number, chosen, scratch, signal));
  if (signal.aborted) return failure('cancelled');
  if (picture === null && (await hasNoDecoder(file, number, signal)))
    return failure('not-decodable', { codec: chosen.codec });
  const rate = usualRate(listed.value.table);
  const { container } = probed.value;
  const of = { file, track: number, fields: fields.value, film: chosen, container };
  const known = knownFilm(of, listed.value.table);
  const lost = await lostPictures(known, listed.value);
  const whole = await wholeTable(known, lost, signal);
  if (signal.aborted) return failure('cancelled');
  return success({
    container,
    codec: chosen.codec,
    width: chosen.width,
    height: chosen.height,
    rotation: chosen.rotation,
    fields: fields.value,
    frameTimes: recordFromTable(whole),
    lostPictures: lost + Math.ceil((known.table.starts.length - whole.starts.length) / (of.fields ? 2 : 1)),
    taggedSlowdown:
      slowdownFromTags(probed.value.tags, rate) ??
      slowdownFromCameraXml(cameraXmlRates(await endOf(file)), rate),
    tracks: probed.value.tracks.map((each, place) => ({
      number: place + 1,
      codec: each.codec,
      width: each.width,
      height: each.height,
    })),
    track: number,
    picture,
  });
}

/** Without the pictures at the end that no decoder gives; looked for where that is quick, or the file is known to break off. */
async function wholeTable(known: KnownFilm, lost: number, signal: AbortSignal): Promise<FrameTable> {
  const { table } = known;
  if (lost === 0 && !canBeginAnywhere(known)) return table;
  const frames = await framesToTheEnd(known, lost > 0, signal);
  const endTick = table.starts[frames] ?? table.endTick;
  return { ...table, starts: table.starts.slice(0, frames), endTick };
}

/** About how many pictures a cut-off file promises and does not hold: AVI and MP4 by their number, Matroska by its length. */
async function lostPictures(
  { file, container, film: { promised, seconds }, table: { starts, ticksPerSecond }, fields }: KnownFilm,
  { packets, cut }: ListedFilm,
): Promise<number> {
  // an edit list leaves pictures of an MP4 out of the list: fewer than promised are no loss by themselves
  if (container === 'AVI' || (container === 'MP4' && cut)) return Math.max(0, (promised ?? 0) - packets);
  if (container !== 'Matroska' || seconds === null) return 0;
  const handle = await open(file, 'r');
  try {
    const { size } = await handle.stat();
    const { buffer, bytesRead } = await handle.read(Buffer.alloc(headBytes), 0, headBytes, 0);
    if (!isMatroskaCut(buffer.subarray(0, bytesRead), size)) return 0;
    // the mean gap: a few pictures at the break may lack those they stand between
    const gap =
      ((starts.at(-1) as number) - (starts[0] as number)) / ticksPerSecond / Math.max(1, starts.length - 1);
    return Math.max(1, Math.round((Math.round(seconds / gap) - starts.length) / (fields ? 2 : 1)));
  } finally {
    await handle.close();
  }
}

/** Bytes in which a Matroska file says how long its segment is. */
const headBytes = 4096;

/** Whether ffmpeg knows a film's coding by name only. */
async function hasNoDecoder(file: string, track: number, signal: AbortSignal): Promise<boolean> {
  const one = ['-map', `0:${filmStream(track)}`, '-frames:v', '1', '-f', 'null', '-'];
  const run = await runMediaTool('ffmpeg', ['-v', 'error', '-i', `file:${file}`, ...one], { signal });
  return !run.ok && /no decoder|decoder.*not found/i.test(String(run.error.detail['message']));
}

/** The end of a file, where cameras write their own XML, as Latin-1. */
async function endOf(file: string): Promise<string> {
  const handle = await open(file, 'r');
  try {
    const { size } = await handle.stat();
    const length = Math.min(size, cameraXmlWithin);
    const { buffer, bytesRead } = await handle.read(Buffer.alloc(length), 0, length, size - length);
    return buffer.subarray(0, bytesRead).toString('latin1');
  } finally {
    await handle.close();
  }
}

/** A small JPEG of the picture at a time, base64; null where that can't be decoded. */
async function pictureAt(
  seconds: number,
  file: string,
  track: number,
  { width, height }: ProbedTrack,
  scratch: string,
  signal: AbortSignal,
): Promise<string | null> {
  const small = Math.min(480, width);
  const run = await runMediaTool(
    'ffmpeg',
    [
      ...['-v', 'error', '-y', '-ss', String(seconds), '-i', `file:${file}`],
      ...['-map', `0:${filmStream(track)}`, '-frames:v', '1', '-an', '-sn', '-dn'],
      ...['-vf', `scale=${small}:${Math.max(1, Math.round((small * height) / width))},setsar=1`],
      ...['-f', 'image2', '-update', '1', '-c:v', 'mjpeg', '-q:v', '4', `file:${scratch}`],
    ],
    { signal, timeoutMs: 60_000 },
  );
  try {
    if (!run.ok) return null;
    return (await readFile(scratch)).toString('base64');
  } catch (error) {
    // beyond the last picture of a damaged file ffmpeg ends well without having written one
    if ((error as NodeJS.ErrnoException).code === 'ENOENT') return null;
    throw error;
  } finally {
    await rm(scratch, { force: true });
  }
}
