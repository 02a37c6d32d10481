import { failure, type HostError, type Result, success } from '#core/host-contract/host-error';
import type { ArrivedClip } from '#core/host-contract/operations/clip-operations';
import { type HostFilm, hostFilmSchema } from '#core/host-contract/operations/media-operations';
import { tableFromRecord } from '#core/timeline/frame-times-record';
import { sameStarts } from '#core/timeline/same-starts';
import { followJob } from '../host/follow-job';
import type { HostClient } from '../host/host-client';
import { factsOfHostFilm } from '../video/facts-of-host-film';
import type { ClipFacts } from '../video/frame-source';
import { readClipFacts } from '../video/read-clip-facts';
import { type ClipToAdd, inputOf, nameOf } from './clip-to-add';
import { sendClip } from './send-clip';
import { shelfWords } from '#core/words/shelf';

const named = (error: HostError, name: string): Result<never> =>
  failure(error.code, { ...error.detail, name });

/** What this window can't read, the host's tools may. */
const forTheHost: ReadonlySet<string> = new Set(['unsupported-codec', 'unreadable-index']);

export interface LookOrder {
  readonly adding: ClipToAdd;
  /** Film track by choice, from 1; null: the first. */
  readonly track: number | null;
  /** The clip in the library, if it has been sent for an earlier look. */
  readonly sent: ArrivedClip | null;
  readonly host: HostClient;
  readonly signal: AbortSignal;
  readonly onWords: (words: string) => void;
  /** The clip had to be sent, so that the host's tools can read it. */
  readonly onSent: (clip: ArrivedClip) => void;
}

export interface LookedAt {
  readonly facts: ClipFacts;
  /** A picture the host made, where this window can't. */
  readonly picture: Blob | null;
}

/**
 * What a clip is. This window reads it when it can; the host's tools read what it can't, and what may be interlaced. For
 * that a file in hand is sent first.
 */
export async function factsOf(order: LookOrder): Promise<Result<LookedAt>> {
  const { adding, track, host, signal, onWords } = order;
  const name = nameOf(adding);
  const read = await readClipFacts({ ...inputOf(adding, host), track }, signal);
  if (!read.ok && !forTheHost.has(read.error.code)) return named(read.error, name);
  if (read.ok && read.value.decodable && !read.value.mayBeInterlaced)
    return success({ facts: read.value, picture: null });
  const film = await askHost(order);
  if (!film.ok) {
    // without the host's tools a film this window decodes is still whole, its fields woven into one picture
    const enough = read.ok && read.value.decodable && film.error.code === 'no-media-tool';
    if (enough) return success({ facts: read.value, picture: null });
    // what this window met says more than that the host's tools did not get further
    const said =
      !read.ok &&
      read.error.code === 'unreadable-index' &&
      film.error.code !== 'cancelled' &&
      film.error.code !== 'not-decodable';
    return named(said ? read.error : film.error, name);
  }
  onWords('');
  return success({
    facts: read.ok ? joined(read.value, film.value) : factsOfHostFilm(film.value),
    picture: film.value.picture === null ? null : jpegOf(film.value.picture),
  });
}

/** The window's own facts where it and the host's tools see the same frames; else, and for fields, the tools'. */
function joined(window: ClipFacts, host: HostFilm): ClipFacts {
  const same = !host.fields && sameStarts(window.table, tableFromRecord(host.frameTimes));
  return same
    ? { ...window, mayBeInterlaced: false }
    : { ...factsOfHostFilm(host), slowedInPart: window.slowedInPart ?? false };
}

async function askHost({
  adding,
  track,
  sent,
  host,
  signal,
  onWords,
  onSent,
}: LookOrder): Promise<Result<HostFilm>> {
  let clip = sent ?? (adding.kind === 'referred' ? adding.clip : null);
  if (!clip && adding.kind === 'file') {
    const arrived = await sendClip(host, adding.file, {
      signal,
      onProgress: (share) => onWords(shelfWords('sendingLibrary', { share: Math.round(share * 100) })),
    });
    if (!arrived.ok) return arrived;
    clip = arrived.value;
    onSent(clip);
  }
  if (!clip) return failure('not-found', { name: nameOf(adding) });
  const started = await host.call('media/look', { clipId: clip.clipId, track });
  if (!started.ok) return started;
  return followJob(host, started.value.jobId, {
    result: hostFilmSchema,
    signal,
    onProgress: (_share, words) => onWords(words),
  });
}

function jpegOf(base64: string): Blob {
  const bytes = Uint8Array.from(atob(base64), (letter) => letter.charCodeAt(0));
  return new Blob([bytes], { type: 'image/jpeg' });
}
