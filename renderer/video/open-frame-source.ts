import { failure, type Result, success } from '#core/host-contract/host-error';
import { clampFrame, frameCount } from '#core/timeline/frame-table';
import { sameStarts } from '#core/timeline/same-starts';
import { createDecoderPump, type PumpSteering } from './decoder-pump';
import { comesFrom, holdingRange, nextFrameToDecode, type Walk } from './decoding-plan';
import { closeFrame } from './frame-ledger';
import type { ClipFacts, FramePicture, FrameSource, OpenFrameSource, ShownAs } from './frame-source';
import { type HeldPicture, holdPicture } from './held-picture';
import { createImagePump } from './image-pump';
import { openFilmAway } from './open-film-away';
import type { OpenedFilm } from './opened-film';
import { createPictureCache } from './picture-cache';
import { PictureLost } from './picture-lost';

/** 512 MB: room for about 165 pictures of 1080p or 40 of 4K (our default). */
export const pictureBudget = 512 * 2 ** 20;
/** Copies on their way out of the decoder at one time. */
const copiesAtOnce = 4;

export const openFrameSource: OpenFrameSource = async (
  input,
  { budgetBytes = pictureBudget, standsFor, signal },
) => {
  const film = await openFilmAway(input, signal);
  if (!film.ok) return film;
  const shown = standsFor ? shownAs(standsFor, film.value.facts) : success(film.value.facts);
  const { decoding } = film.value;
  if (shown.ok && decoding) {
    return success(createFrameSource(shown.value, film.value, decoding, budgetBytes));
  }
  film.value.close();
  return shown.ok ? failure('unsupported-codec', { codec: film.value.facts.codec }) : shown;
};

/** The facts of a clip whose pictures come from a copy. */
function shownAs(clip: ShownAs, copy: ClipFacts): Result<ClipFacts> {
  if (sameStarts(clip.table, copy.table, 0.5)) return success({ ...copy, ...clip });
  return failure('conflict', { frames: frameCount(clip.table), copied: frameCount(copy.table) });
}

interface Wish {
  readonly frame: number;
  resolve(picture: FramePicture): void;
  reject(reason: unknown): void;
}

function createFrameSource(
  facts: ClipFacts,
  film: OpenedFilm,
  decoding: VideoDecoderConfig | 'images',
  budgetBytes: number,
): FrameSource {
  const { order } = film.index;
  const frames = frameCount(facts.table);
  const cache = createPictureCache(budgetBytes);
  const turning = { rotation: film.facts.rotation, flip: film.flip };
  const shown = { width: facts.width, height: facts.height };
  const copying = new Set<number>();
  const lost = new Set<number>();
  let pictureBytes = (film.facts.width * film.facts.height * 3) / 2;
  let walk: Walk = { playhead: 0, towards: 0 };
  let wish: Wish | null = null;
  let roomMade: (() => void) | null = null;
  let closed = false;

  const capacity = (): number => Math.max(3, Math.floor(budgetBytes / pictureBytes) - copiesAtOnce);
  const range = () => holdingRange(walk, capacity(), frames);
  const isMissing = (frame: number): boolean => !cache.has(frame) && !copying.has(frame);

  const settle = (frame: number, end: (settled: Wish) => void): void => {
    if (wish?.frame !== frame) return;
    const settled = wish;
    wish = null;
    end(settled);
  };

  const keep = async (frame: number, decoded: VideoFrame): Promise<void> => {
    copying.add(frame);
    let picture: HeldPicture;
    try {
      picture = await holdPicture(decoded, frame, shown, turning);
    } catch (problem) {
      lost.add(frame);
      settle(frame, ({ reject }) => reject(new PictureLost(frame, String(problem))));
      return;
    } finally {
      copying.delete(frame);
      roomMade?.();
      pump.wake();
    }
    if (closed) {
      picture.release();
      return;
    }
    pictureBytes = picture.bytes;
    lost.delete(frame);
    cache.put(picture, walk.playhead, range());
    settle(frame, ({ resolve }) => resolve(picture));
  };

  const steering: PumpSteering = {
    next: (run, isPending) =>
      nextFrameToDecode(
        walk,
        range(),
        order,
        run,
        (frame) => !isMissing(frame) || isPending(frame) || lost.has(frame),
      ),
    comesFrom: (run, frame) => comesFrom(run, order, frame),
    wants: (frame) => {
      const { first, last } = range();
      return frame >= first && frame <= last && isMissing(frame);
    },
    needsNow: (frame) => {
      const { first } = range();
      return frame >= first && frame <= walk.playhead && isMissing(frame);
    },
    deliver: (frame, picture) => {
      if (closed) closeFrame(picture);
      else void keep(frame, picture);
    },
    room: () =>
      copying.size < copiesAtOnce
        ? Promise.resolve()
        : new Promise((resolve) => {
            roomMade = resolve;
          }),
    lost: (gone) => {
      for (const frame of gone) {
        lost.add(frame);
        settle(frame, ({ reject }) => reject(new PictureLost(frame, 'it is damaged')));
      }
    },
    unreadable: (problem) => {
      settle(walk.playhead, ({ frame, reject }) => reject(new PictureLost(frame, String(problem), true)));
    },
  };
  const pump =
    decoding === 'images' ? createImagePump(film, steering) : createDecoderPump(film, decoding, steering);
  pump.wake();

  return {
    facts,
    held: (frame) => cache.get(frame) ?? null,
    show(frame, towards) {
      wish?.reject(new DOMException('A newer frame was asked for', 'AbortError'));
      wish = null;
      if (closed) return Promise.reject(new DOMException('The clip is closed', 'AbortError'));
      const playhead = clampFrame(facts.table, frame);
      walk = { playhead, towards };
      lost.delete(playhead);
      const picture = cache.get(playhead);
      const answer = picture
        ? Promise.resolve<FramePicture>(picture)
        : new Promise<FramePicture>((resolve, reject) => {
            wish = { frame: playhead, resolve, reject };
          });
      pump.wake();
      return answer;
    },
    memory: () => ({
      heldBytes: cache.bytes + copying.size * pictureBytes,
      budgetBytes,
      pictures: cache.count,
    }),
    close() {
      if (closed) return;
      closed = true;
      wish?.reject(new DOMException('The clip is closed', 'AbortError'));
      wish = null;
      pump.close();
      cache.clear();
      film.close();
      roomMade?.();
    },
  };
}
