import { failure, type Result, success } from '#core/host-contract/host-error';
import { clampFrame, frameCount } from '#core/timeline/frame-table';
import { sameStarts } from '#core/timeline/same-starts';
import { createDecoderPump, type PumpSteering } from './decoder-pump';
import { comesFrom, nearestMissing, nextFrameToDecode, type Walk } from './decoding-plan';
import { closeFrame } from './frame-ledger';
import type { ClipFacts, FramePicture, FrameSource, OpenFrameSource, ShownAs } from './frame-source';
import { usualBytes, type HeldPicture, holdPicture, lightShare } from './held-picture';
import { type HoldPlan, holdPlan, neighbourhood } from './hold-plan';
import { createImagePump } from './image-pump';
import { openFilmAway } from './open-film-away';
import type { OpenedFilm } from './opened-film';
import { createPictureCache, type HoldingRange } from './picture-cache';
import { createPassedPictures } from './passed-pictures';
import { PictureLost } from './picture-lost';

/** 512 MB: room for about 165 pictures of 1080p or 40 of 4K (our default), four times as many at half size. */
export const pictureBudget = 512 * 2 ** 20;
/** Copies on their way out of the decoder at one time. */
const copiesAtOnce = 4;
/** After a jump, pictures passed on the way are copied once the one waited for is there: at most so many, or this share of all. */
const mostPassed = 8;
const passedShare = 1 / 16;
/** Nothing asked for this long: the coach has stopped, and full resolution is worth a run. Ten steps a second don't stop. */
const restMs = 250;
/** After a jump, the frames around wait this long: another jump is not held up by what they would put into the decoder. */
const jumpRestMs = 40;

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
  /** Half size will do. */
  readonly half: boolean;
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
  let pictureBytes = usualBytes(film.facts.width, film.facts.height);
  const passedAtMost = Math.min(mostPassed, Math.floor((budgetBytes / pictureBytes) * passedShare));
  const spare = copiesAtOnce + passedAtMost;
  let budget = budgetBytes;
  const cache = createPictureCache(() => Math.max(budget / 2, budget - spare * pictureBytes));
  const wanted = neighbourhood(film.facts.rate, order);
  const second = Math.ceil(film.facts.rate);
  const turning = { rotation: film.facts.rotation, flip: film.flip };
  const shown = { width: facts.width, height: facts.height };
  const copying = new Set<number>();
  const lost = new Set<number>();
  let halvesToWhole = decoding === 'images' ? 1 : 4;
  let walk: Walk = { playhead: 0, towards: 0 };
  /** Whether half size will do for what is held. */
  let half = false;
  /** Until then nobody has said whether half size will do. */
  let asked = false;
  let wish: Wish | null = null;
  /** The last wish that was tried a second time. */
  let triedAgain: Wish | null = null;
  let onWhole: ((picture: FramePicture) => void) | null = null;
  let roomMade: (() => void) | null = null;
  let closed = false;
  let rested = false;
  let resting: ReturnType<typeof setTimeout> | undefined;
  /** When the picture of the last jump was delivered. */
  let jumpedUntil = 0;

  const capacity = (): number => Math.max(3, Math.floor(budget / pictureBytes) - spare);
  const plan = (): HoldPlan =>
    holdPlan({
      walk,
      frames,
      capacity: capacity(),
      halvesToWhole: half ? halvesToWhole : 1,
      wanted,
      second,
      rested,
    });
  const isComing = (frame: number): boolean => copying.has(frame) || passed.has(frame);
  const isMissing = (frame: number): boolean => !cache.has(frame) && !isComing(frame);
  const lacksWhole = (frame: number): boolean => !cache.hasWhole(frame) && !isComing(frame);
  const lacks = (frame: number): boolean => (half ? isMissing(frame) : lacksWhole(frame));
  const isWithin = (frame: number, { first, last }: HoldingRange): boolean => frame >= first && frame <= last;

  /** What is drawn while the coach moves. */
  const lightOf = (picture: HeldPicture): HeldPicture => (half ? (picture.light ?? picture) : picture);
  /** Where the coach stops, the whole picture follows the one that was given. */
  const tellWhole = (): void => {
    const whole = cache.get(walk.playhead);
    if (!onWhole || wish || !whole?.whole || (whole.light && !rested)) return;
    const tell = onWhole;
    onWhole = null;
    tell(whole);
  };

  const settle = (frame: number, end: (settled: Wish) => void): void => {
    if (wish?.frame !== frame) return;
    const settled = wish;
    wish = null;
    end(settled);
    // once it is drawn
    setTimeout(keepPassed);
  };
  const jumpedTo = (): number | null => (wish !== null && walk.towards === 0 ? wish.frame : null);
  const keepPassed = (): void => {
    if (!closed && jumpedTo() !== null) return;
    const { range } = plan();
    passed.release((frame) => !closed && isWithin(frame, range));
  };

  const rest = (milliseconds: number): void => {
    clearTimeout(resting);
    resting = setTimeout(() => {
      rested = true;
      tellWhole();
      pump.wake();
    }, milliseconds);
  };

  const keep = async (frame: number, decoded: VideoFrame): Promise<void> => {
    copying.add(frame);
    let picture: HeldPicture;
    try {
      picture = await holdPicture(decoded, {
        frame,
        shown,
        turning,
        half: half && wish?.frame !== frame && !isWithin(frame, plan().whole),
        // the first pictures are there before anyone has asked, and are stepped through like the others
        moving: half || !asked,
      });
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
    if (picture.whole) {
      pictureBytes = picture.bytes;
      halvesToWhole = picture.canHalve ? (picture.light ? 4 * lightShare : 4) : 1;
    }
    lost.delete(frame);
    const { range, whole } = plan();
    cache.put(picture, walk.playhead, range, whole);
    if (frame === walk.playhead && walk.towards === 0 && !rested) {
      jumpedUntil = performance.now() + jumpRestMs;
      setTimeout(pump.wake, jumpRestMs);
    }
    if (picture.whole || wish?.half)
      settle(frame, ({ resolve }) => {
        const given = lightOf(picture);
        if (given.whole) onWhole = null;
        resolve(given);
      });
    if (frame === walk.playhead) tellWhole();
  };

  const passed = createPassedPictures(passedAtMost, (frame, picture) => void keep(frame, picture));

  const steering: PumpSteering = {
    next(run, isPending) {
      const { range, whole, eagerAhead, around } = plan();
      const comes = (frame: number): boolean => isPending(frame) || lost.has(frame);
      const { playhead, towards } = walk;
      if (towards === 0 && !rested && !lacks(playhead) && performance.now() < jumpedUntil) return null;
      const isThere = (frame: number): boolean => !lacks(frame) || comes(frame);
      // what the coach stays at and looks at closely comes before what may be wanted next
      if (rested && lacksWhole(playhead) && !comes(playhead)) return playhead;
      const near = rested && !lacks(playhead) ? nearestMissing(walk, around, order, run, isThere) : null;
      if (near !== null) return near;
      const missing = nextFrameToDecode(walk, range, order, run, isThere, eagerAhead);
      if (missing !== null || !rested) return missing;
      return nextFrameToDecode(walk, whole, order, run, (frame) => !lacksWhole(frame) || comes(frame));
    },
    comesFrom: (run, frame) => comesFrom(run, order, frame),
    wants(frame) {
      const { range, whole } = plan();
      if (isWithin(frame, range) && lacks(frame)) return true;
      return rested && isWithin(frame, whole) && lacksWhole(frame);
    },
    needsNow(frame) {
      const { range, whole } = plan();
      if (frame > walk.playhead) return false;
      if (frame >= range.first && lacks(frame)) return true;
      return rested && frame >= whole.first && lacksWhole(frame);
    },
    jumpedTo,
    deliver: (frame, picture) => {
      const waited = jumpedTo();
      if (closed) closeFrame(picture);
      else if (waited === null || waited === frame || !passed.hasRoom()) void keep(frame, picture);
      else passed.add(frame, picture);
    },
    room: () =>
      copying.size < copiesAtOnce
        ? Promise.resolve()
        : new Promise((resolve) => {
            roomMade = resolve;
          }),
    lost: (gone) => {
      // a decoder that lost its way gives a picture when it is asked again from the start: the one waited for, once
      if (wish && gone.includes(wish.frame) && triedAgain !== wish) {
        triedAgain = wish;
        setTimeout(pump.again);
        return;
      }
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
    resolution: { width: film.facts.width, height: film.facts.height },
    held: (frame) => {
      const picture = cache.get(frame);
      if (!picture) return null;
      return rested && frame === walk.playhead ? picture : lightOf(picture);
    },
    show(frame, towards, whenWhole) {
      wish?.reject(new DOMException('A newer frame was asked for', 'AbortError'));
      wish = null;
      onWhole = null;
      if (closed) return Promise.reject(new DOMException('The clip is closed', 'AbortError'));
      const playhead = clampFrame(facts.table, frame);
      walk = { playhead, towards };
      half = whenWhole !== undefined;
      asked = true;
      lost.delete(playhead);
      rested = false;
      rest(restMs);
      const held = cache.get(playhead);
      const picture = held && lightOf(held);
      const enough = picture && (half || picture.whole);
      if (whenWhole && !picture?.whole) onWhole = whenWhole;
      const answer = enough
        ? Promise.resolve<FramePicture>(picture)
        : new Promise<FramePicture>((resolve, reject) => {
            wish = { frame: playhead, half, resolve, reject };
          });
      passed.handOn(playhead);
      if (jumpedTo() === null) setTimeout(keepPassed);
      pump.wake();
      return answer;
    },
    memory: () => ({
      heldBytes: cache.bytes + (copying.size + passed.count()) * pictureBytes,
      budgetBytes: budget,
      pictures: cache.count,
    }),
    limitTo(bytes) {
      budget = bytes;
      const { range, whole } = plan();
      cache.shrink(walk.playhead, range, whole);
      pump.wake();
    },
    close() {
      if (closed) return;
      closed = true;
      clearTimeout(resting);
      wish?.reject(new DOMException('The clip is closed', 'AbortError'));
      wish = null;
      pump.close();
      keepPassed();
      cache.clear();
      film.close();
      roomMade?.();
    },
  };
}
