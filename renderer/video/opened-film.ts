import type { InputVideoTrack } from 'mediabunny';
import { failure, type Result, success } from '#core/host-contract/host-error';
import { slowdownFromRate, slowdownFromTags } from '#core/timeline/capture-rate';
import { mayBeInterlacedAvc } from '#core/timeline/avc-interlaced';
import { editEnd, isRearranged } from '#core/timeline/edit-list';
import { phoneCapturedRate } from '#core/timeline/phone-slow-motion';
import { isEvenRate, usualRate } from '#core/timeline/picture-order';
import { bytesOf } from './buffer-bytes';
import { type DecodingProbe, decoderConfigOf, probeDecoding } from './decoder-setup';
import type { ClipFacts, ClipInput } from './frame-source';
import { type OpenedClip, openClip, wordsOf } from './open-clip';
import { type PacketIndex, readPacketIndex, TooManyPictures } from './packet-index';
import type { Ground } from './new-ground';
import { tellReordering } from './tell-reordering';

/** A clip opened for decoding: its facts and everything a decoder needs. Closed by `close`. */
export interface OpenedFilm {
  readonly facts: ClipFacts;
  readonly index: PacketIndex;
  /** How its pictures are decoded: by a film decoder, or each as an image of its own; null: not in this window. */
  readonly decoding: VideoDecoderConfig | 'images' | null;
  readonly flip: boolean;
  /** Whether the decoder's order, not the container's times, tells which picture is which. */
  readonly timesInDecodingOrder: boolean;
  close(): void;
}

export type OpenFilm = (clip: ClipInput, signal: AbortSignal) => Promise<Result<OpenedFilm>>;

/**
 * Reads a film's container where it is called: in a worker, as what is in a file may keep a reader busy for ever
 * (`openFilmInWorker`). `ground` is told of everything that is read for the first time.
 */
export async function openFilm(
  clip: ClipInput,
  signal: AbortSignal,
  ground: Ground,
): Promise<Result<OpenedFilm>> {
  let opened: Result<OpenedClip>;
  try {
    opened = await openClip(clip, signal, ground);
  } catch (problem) {
    // a container whose very head is mangled makes its reader throw
    return troubleWith(problem, signal);
  }
  if (!opened.ok) return opened;
  const { input } = opened.value;
  const stop = (): void => input.dispose();
  signal.addEventListener('abort', stop, { once: true });
  try {
    const film = await inspect(opened.value, signal, ground);
    if (!film.ok) input.dispose();
    return film;
  } catch (problem) {
    input.dispose();
    return troubleWith(problem, signal);
  } finally {
    signal.removeEventListener('abort', stop);
  }
}

function troubleWith(problem: unknown, signal: AbortSignal): Result<never> {
  if (signal.aborted) return failure('cancelled');
  if (problem instanceof TooManyPictures) return failure('too-large');
  if (problem instanceof TypeError) return failure('host-unreachable', { reason: wordsOf(problem) });
  return failure('truncated', { reason: wordsOf(problem) });
}

async function inspect(
  { input, track, container, movie, number, tracks }: OpenedClip,
  signal: AbortSignal,
  ground: Ground,
): Promise<Result<OpenedFilm>> {
  // pictures shown twice or left out in the middle: the host's tools follow that, and a working copy has it done
  const rearranged = movie !== null && isRearranged(movie, track.id);
  const endTick = movie ? editEnd(movie, track.id) : Number.POSITIVE_INFINITY;
  const listed = await readPacketIndex(track, endTick, ground, signal);
  const { table } = listed.order;
  // this reader stops at wrong bytes; the host's tools go on behind them
  if (listed.brokeOff) return failure('unreadable-index', { cut: 1 });
  if (table.starts.length === 0) return failure('truncated', { lost: listed.lost });
  const rate = usualRate(table);
  const tags = (await input.getMetadataTags()).raw ?? {};
  const given = await decoderConfigOf(track);
  const first = given && (await tellReordering({ config: given, index: listed }, false));
  const probe = first && (await probeDecoding(first.config, first.index, signal));
  const fed = first && probe?.outOfOrder ? await tellReordering(first, true) : first;
  const config = fed?.config ?? null;
  const index = fed?.index ?? listed;
  const images = !config && (await holdsImages(index));
  const decodable = probe?.decodable ? config : images ? 'images' : null;
  const decoding = rearranged ? null : decodable;
  const facts: ClipFacts = {
    container,
    codec: images
      ? 'mjpeg'
      : ((await track.getCodecParameterString()) ?? (await track.getCodec()) ?? 'unknown'),
    ...(await shownSize(track, probe?.visible ?? null)),
    rotation: await track.getRotation(),
    table,
    evenRate: isEvenRate(table),
    rate,
    taggedSlowdown: slowdownFromTags(tags, rate) ?? (movie && slowdownInMovie(movie, rate)),
    decodable: decoding !== null,
    lostPictures: index.lost,
    track: number,
    tracks,
    fields: false,
    mayBeInterlaced: config !== null && /^avc/.test(config.codec) && (await codesFields(config, index)),
  };
  return success({
    facts,
    index,
    decoding,
    flip: await track.getFlip(),
    timesInDecodingOrder: probe?.outOfOrder ?? false,
    close: () => input.dispose(),
  });
}

/**
 * The shown size, in square pixels and turned. Where a picture holds another part than its container says, it is the picture's:
 * the container's size would stretch it.
 */
async function shownSize(
  track: InputVideoTrack,
  visible: DecodingProbe['visible'],
): Promise<Pick<ClipFacts, 'width' | 'height'>> {
  const told = { width: await track.getDisplayWidth(), height: await track.getDisplayHeight() };
  const coded = { width: await track.getCodedWidth(), height: await track.getCodedHeight() };
  if (!visible || (visible.width === coded.width && visible.height === coded.height)) return told;
  const across = visible.width / coded.width;
  const down = visible.height / coded.height;
  const isUpright = (await track.getRotation()) % 180 === 0;
  return {
    width: Math.round(told.width * (isUpright ? across : down)),
    height: Math.round(told.height * (isUpright ? down : across)),
  };
}

/** What a phone's own box in an MP4 tells. */
function slowdownInMovie(movie: Uint8Array, rate: number): number | null {
  const captured = phoneCapturedRate(movie);
  return captured === null ? null : slowdownFromRate(captured, rate);
}

/** Whether the pictures are JPEGs, told by the first one: containers name them in many ways. */
async function holdsImages(index: PacketIndex): Promise<boolean> {
  const data = (await index.read(0))?.data;
  return data?.[0] === 0xff && data[1] === 0xd8 && data[2] === 0xff;
}

/** Whether H.264's parameters allow fields; they stand in the configuration or before the first key picture. */
async function codesFields(config: VideoDecoderConfig, index: PacketIndex): Promise<boolean> {
  const record = bytesOf(config.description);
  if (record) return mayBeInterlacedAvc(record);
  const first = await index.read(index.order.keyOfFrame[0] ?? 0);
  return first !== null && mayBeInterlacedAvc(first.data);
}
