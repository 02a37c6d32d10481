import { failure, type Result, success } from '#core/host-contract/host-error';
import { slowdownFromTags } from '#core/timeline/capture-rate';
import { editEnd } from '#core/timeline/edit-list';
import { isEvenRate, usualRate } from '#core/timeline/picture-order';
import { decoderConfigOf, probeDecoding } from './decoder-setup';
import type { ClipFacts, ClipInput } from './frame-source';
import { type OpenedClip, openClip, wordsOf } from './open-clip';
import { type PacketIndex, readPacketIndex } from './packet-index';
import { readMovieBox } from './read-movie-box';

/** A clip opened for decoding: its facts and everything a decoder needs. Closed by `close`. */
export interface OpenedFilm {
  readonly facts: ClipFacts;
  readonly index: PacketIndex;
  /** Null when this window knows no such codec. */
  readonly config: VideoDecoderConfig | null;
  readonly flip: boolean;
  /** Whether the decoder's order, not the container's times, tells which picture is which. */
  readonly timesInDecodingOrder: boolean;
  close(): void;
}

export async function openFilm(clip: ClipInput, signal: AbortSignal): Promise<Result<OpenedFilm>> {
  let opened: Result<OpenedClip>;
  try {
    opened = await openClip(clip, signal);
  } catch (problem) {
    // a container whose very head is mangled makes its reader throw
    return troubleWith(problem, signal);
  }
  if (!opened.ok) return opened;
  const { input } = opened.value;
  const stop = (): void => input.dispose();
  signal.addEventListener('abort', stop, { once: true });
  try {
    const film = await inspect(opened.value, clip, signal);
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
  if (problem instanceof TypeError) return failure('host-unreachable', { reason: wordsOf(problem) });
  return failure('truncated', { reason: wordsOf(problem) });
}

async function inspect(
  { input, track, container }: OpenedClip,
  clip: ClipInput,
  signal: AbortSignal,
): Promise<Result<OpenedFilm>> {
  const movie = /^(MP4|QuickTime)/.test(container) ? await readMovieBox(clip, signal) : null;
  const endTick = movie ? editEnd(movie, track.id) : Number.POSITIVE_INFINITY;
  const index = await readPacketIndex(track, endTick, signal);
  const { table } = index.order;
  if (table.starts.length === 0) return failure('truncated', { lost: index.lost });
  const rate = usualRate(table);
  const tags = (await input.getMetadataTags()).raw ?? {};
  const config = await decoderConfigOf(track);
  const probe = config ? await probeDecoding(config, index, signal) : null;
  const facts: ClipFacts = {
    container,
    codec: (await track.getCodecParameterString()) ?? (await track.getCodec()) ?? 'unknown',
    width: await track.getDisplayWidth(),
    height: await track.getDisplayHeight(),
    rotation: await track.getRotation(),
    table,
    evenRate: isEvenRate(table),
    rate,
    taggedSlowdown: slowdownFromTags(tags, rate),
    decodable: probe?.decodable ?? false,
    lostPictures: index.lost,
  };
  return success({
    facts,
    index,
    config,
    flip: await track.getFlip(),
    timesInDecodingOrder: probe?.outOfOrder ?? false,
    close: () => input.dispose(),
  });
}
