import { ALL_FORMATS, BlobSource, Input, type InputVideoTrack, type Source, UrlSource } from 'mediabunny';
import { failure, type Result, success } from '#core/host-contract/host-error';
import type { FilmTrack } from '#core/host-contract/operations/media-operations';
import { isEncrypted, listedPictures, mayGoOnInFragments } from '#core/timeline/listed-pictures';
import {
  isMatroskaCut,
  isPhoto,
  isUnreadableContainer,
  listsOnlyReadable,
  nameContainer,
} from '#core/timeline/container-name';
import { isMatroskaEncrypted } from '#core/timeline/matroska-encryption';
import type { ClipInput } from './frame-source';
import type { Ground } from './new-ground';
import { mostPictures } from './packet-index';
import { clipLength, readClipBytes } from './read-clip-bytes';
import { hasFragments, readMovieBox } from './read-movie-box';

/** An opened container and its film; whoever opened it disposes `input`. */
export interface OpenedClip {
  readonly input: Input;
  readonly track: InputVideoTrack;
  readonly container: string;
  /** Content of an MP4's or MOV's `moov` box, where it could be had. */
  readonly movie: Uint8Array | null;
  /** Place of the track among the film tracks, from 1, and what those are. */
  readonly number: number;
  readonly tracks: readonly FilmTrack[];
}

/** Bytes looked at to name a container that the demuxer does not know. */
const headBytes = 4096;

/** Opens a clip's container and chooses its film track. Nothing is read beyond headers. */
export async function openClip(
  clip: ClipInput,
  signal: AbortSignal,
  ground: Ground,
): Promise<Result<OpenedClip>> {
  const head = await readHead(clip, signal);
  if (!head.ok) return head;
  if (head.value.byteLength === 0) return failure('empty-file');
  const movie = await readMovieBox(clip, signal);
  if (movie === null && isPhoto(head.value)) return failure('not-a-video', { kind: 'photo' });
  if (movie && isEncrypted(movie)) return failure('encrypted');
  if (nameContainer(head.value) === 'Matroska' && (await isLockedMatroska(clip, signal)))
    return failure('encrypted');
  // the library passes over a last cluster that is not whole; the host's tools show what is in it
  if (isMatroskaCut(head.value, await clipLength(clip, signal)))
    return failure('unreadable-index', { cut: 1 });
  // the library would write out every picture that is claimed before it looks for one
  if (movie && listedPictures(movie) > mostPictures) return failure('unreadable-index');
  // the library takes what the header lists for all there is
  if (movie && mayGoOnInFragments(movie) && (await hasFragments(clip, signal)))
    return failure('unreadable-index');
  const source = sourceOf(clip);
  source.on('read', ({ start, end }) => ground.read(start, end));
  const input = new Input({ formats: ALL_FORMATS, source });
  const stop = (): void => input.dispose();
  signal.addEventListener('abort', stop, { once: true });
  const found = await chooseTrack(input, head.value, clip.track ?? null).finally(() =>
    signal.removeEventListener('abort', stop),
  );
  if (!found.ok) {
    input.dispose();
    return found;
  }
  return success({ ...found.value, movie });
}

/** Bytes in which a Matroska file lists its tracks, as a rule right after its head. */
const tracksWithin = 65_536;
const isLockedMatroska = async (clip: ClipInput, signal: AbortSignal): Promise<boolean> =>
  isMatroskaEncrypted(await readClipBytes(clip, 0, tracksWithin, signal));

async function chooseTrack(
  input: Input,
  head: Uint8Array,
  wanted: number | null,
): Promise<Result<Omit<OpenedClip, 'movie'>>> {
  const name = nameContainer(head);
  if (!(await input.canRead())) {
    return name !== null && (isUnreadableContainer(name) || listsOnlyReadable(name))
      ? failure('unsupported-codec', { container: name })
      : failure(name === null ? 'not-a-video' : 'truncated');
  }
  const format = await input.getFormat();
  const tracks = await input.getVideoTracks();
  const listed = await Promise.all(tracks.map(describe));
  // the first track in the file's own order with a codec we know: a thumbnail or depth track comes after the film
  const known = listed.findIndex(({ codec }) => codec !== unknownCodec);
  const place = wanted === null ? Math.max(0, known) : wanted - 1;
  const track = tracks[place];
  if (track) return success({ input, track, container: format.name, number: place + 1, tracks: listed });
  if (name !== null && listsOnlyReadable(name)) return failure('unsupported-codec', { container: name });
  if ((await input.getTracks()).length > 0) return failure('no-video-track');
  // a recognised container without a single track: its index was never written, or is cut off
  return failure('truncated');
}

const unknownCodec = 'unknown';

async function describe(track: InputVideoTrack, place: number): Promise<FilmTrack> {
  return {
    number: place + 1,
    codec: (await track.getCodec()) ?? unknownCodec,
    width: await track.getDisplayWidth(),
    height: await track.getDisplayHeight(),
  };
}

function sourceOf(clip: ClipInput): Source {
  if ('blob' in clip) return new BlobSource(clip.blob);
  return new UrlSource(new URL(clip.address, location.href), {
    // a host that does not answer is said at once, not retried for ever
    getRetryDelay: (attempts) => (attempts < 2 ? 0.2 : null),
    maxCacheSize: 48 * 2 ** 20,
    handleUnhandledError: () => undefined,
  });
}

async function readHead(clip: ClipInput, signal: AbortSignal): Promise<Result<Uint8Array>> {
  if ('blob' in clip) {
    try {
      return success(new Uint8Array(await clip.blob.slice(0, headBytes).arrayBuffer()));
    } catch (problem) {
      return failure('cannot-read', { reason: wordsOf(problem) });
    }
  }
  try {
    const answer = await fetch(clip.address, { headers: { Range: `bytes=0-${headBytes - 1}` }, signal });
    if (answer.status === 416) return success(new Uint8Array());
    if (answer.status === 404) return failure('clip-missing');
    if (answer.status === 401 || answer.status === 403) return failure('not-allowed');
    if (!answer.ok) return failure('cannot-read', { status: answer.status });
    // a server that ignores ranges would send the whole film: take the first bytes and hang up
    const reader = answer.body?.getReader();
    const first = await reader?.read();
    await reader?.cancel();
    return success(first?.value ?? new Uint8Array());
  } catch (problem) {
    if (signal.aborted) return failure('cancelled');
    return failure('host-unreachable', { reason: wordsOf(problem) });
  }
}

export const wordsOf = (problem: unknown): string =>
  (problem instanceof Error ? problem.message : String(problem)).slice(0, 200);
