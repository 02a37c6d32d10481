import { failure, type Result, success } from '#core/host-contract/host-error';
import { clampFrame, frameCount } from '#core/timeline/frame-table';
import { sameStarts } from '#core/timeline/same-starts';
import { type Bell, createBell } from './bell';
import { createDecoderPump } from './decoder-pump';
import { comesFrom } from './decoding-plan';
import { createFrameAsking, type FrameAsking } from './frame-asking';
import { closeFrame } from './frame-ledger';
import type { ClipFacts, FrameSource, OpenFrameSource, ShownAs } from './frame-source';
import { type HeldPicture, holdPicture } from './held-picture';
import { holdPlan, neighbourhood } from './hold-plan';
import { createHoldings, type Holdings } from './holdings';
import { createImagePump } from './image-pump';
import { awaitedFrame, hasStopped, jumpedTo, mayTryAgain } from './looking-machine';
import { openFilmInWorker } from './open-film-in-worker';
import type { OpenedFilm } from './opened-film';
import { createPassedPictures } from './passed-pictures';
import { PictureLost } from './picture-lost';
import type { PumpSteering } from './pump-steering';
import { isNeededNow, isWanted, isWithin, nextWanted, type Wanting } from './wanted-frames';

/** 512 MB: room for about 165 pictures of 1080p or 40 of 4K (our default), four times as many at half size. */
export const pictureBudget = 512 * 2 ** 20;
/** After a jump, the frames around wait this long: another jump is not held up by what they would put into the decoder. */
const jumpRestMs = 40;

export const openFrameSource: OpenFrameSource = async (
  input,
  { budgetBytes = pictureBudget, standsFor, signal },
) => {
  const film = await openFilmInWorker(input, signal);
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

/** What the parts of a frame source share. */
interface Source {
  readonly facts: ClipFacts;
  readonly film: OpenedFilm;
  readonly holdings: Holdings;
  readonly asking: FrameAsking;
  readonly passed: ReturnType<typeof createPassedPictures>;
  /** Rung when a copy out of the decoder is done. */
  readonly roomMade: Bell;
  wanting(): Wanting;
  wakePump(): void;
}

/**
 * What is asked for is a state of looking-machine.ts, and wanted-frames.ts tells from it what to decode; here the pump, the
 * copies and the pictures held are brought together.
 */
function createFrameSource(
  facts: ClipFacts,
  film: OpenedFilm,
  decoding: VideoDecoderConfig | 'images',
  budgetBytes: number,
): FrameSource {
  const holdings = createHoldings(film, { canHalve: decoding !== 'images', budgetBytes });
  const { cache, lost } = holdings;
  const source: Source = {
    facts,
    film,
    holdings,
    asking: createFrameAsking(() => {
      asking.giveWhole(cache.get(asking.looking().walk.playhead));
      pump.wake();
    }),
    passed: createPassedPictures(
      holdings.passedAtMost,
      (frame, picture) => void keep(source, frame, picture),
    ),
    roomMade: createBell(),
    wanting: createWanting(film, frameCount(facts.table), holdings, () => source),
    wakePump: () => pump.wake(),
  };
  const { asking, passed, roomMade } = source;
  const steering = steeringOf(source, () => pump.again());
  const pump =
    decoding === 'images' ? createImagePump(film, steering) : createDecoderPump(film, decoding, steering);
  pump.wake();

  return {
    facts,
    resolution: { width: film.facts.width, height: film.facts.height },
    held: (frame) => {
      const picture = cache.get(frame);
      if (!picture) return null;
      const looking = asking.looking();
      return hasStopped(looking) && frame === looking.walk.playhead
        ? picture
        : whileMoving(picture, looking.half);
    },
    show(frame, towards, onWhole) {
      const playhead = clampFrame(facts.table, frame);
      const half = onWhole !== undefined;
      const held = cache.get(playhead);
      const picture = held ? whileMoving(held, half) : null;
      lost.delete(playhead);
      const here = picture && (half || picture.whole) ? picture : null;
      const answer = asking.ask({ playhead, towards }, here, onWhole);
      passed.handOn(playhead);
      if (jumpedTo(asking.looking()) === null) setTimeout(() => keepPassed(source));
      pump.wake();
      return answer;
    },
    memory: () => holdings.memory(passed.count()),
    limitTo(bytes) {
      holdings.limitTo(bytes);
      const { looking, plan } = source.wanting();
      cache.shrink(looking.walk.playhead, plan.range, plan.whole);
      pump.wake();
    },
    close() {
      if (isClosed(source)) return;
      asking.close();
      pump.close();
      keepPassed(source);
      cache.clear();
      film.close();
      roomMade.ring();
    },
  };
}

const isClosed = ({ asking }: Source): boolean => asking.looking().kind === 'closed';

/** What is drawn while the coach moves. */
const whileMoving = (picture: HeldPicture, half: boolean): HeldPicture =>
  half ? (picture.light ?? picture) : picture;

function createWanting(
  { facts: { rate }, index: { order } }: OpenedFilm,
  frames: number,
  { cache, copying, capacity, halvesToWhole }: Holdings,
  source: () => Source,
): () => Wanting {
  const wanted = neighbourhood(rate, order);
  const second = Math.ceil(rate);
  const isComing = (frame: number): boolean => copying.has(frame) || source().passed.has(frame);
  const isMissing = (frame: number): boolean => !cache.has(frame) && !isComing(frame);
  const lacksWhole = (frame: number): boolean => !cache.hasWhole(frame) && !isComing(frame);
  return () => {
    const looking = source().asking.looking();
    const plan = holdPlan({
      walk: looking.walk,
      frames,
      capacity: capacity(),
      halvesToWhole: looking.half ? halvesToWhole() : 1,
      wanted,
      second,
      rested: hasStopped(looking),
    });
    return { looking, plan, isMissing, lacksWhole };
  };
}

/** Pictures passed on the way to a jump's are copied once that one is shown, where they are worth it. */
function keepPassed(source: Source): void {
  const closed = isClosed(source);
  const { looking, plan } = source.wanting();
  if (!closed && jumpedTo(looking) !== null) return;
  source.passed.release((frame) => !closed && isWithin(frame, plan.range));
}

/** Tells who waits for a frame that it can't be had. */
function failFrame(source: Source, frame: number, reason: PictureLost): void {
  // what was passed is copied once the answer is on the screen
  if (source.asking.fail(frame, reason)) setTimeout(() => keepPassed(source));
}

/** Copies a decoder's picture and gives it to who waits for it. */
async function keep(source: Source, frame: number, decoded: VideoFrame): Promise<void> {
  const { facts, film, asking, roomMade, wanting, wakePump } = source;
  const { cache, copying, lost, learnFrom } = source.holdings;
  copying.add(frame);
  let picture: HeldPicture;
  try {
    const { looking, plan } = wanting();
    picture = await holdPicture(decoded, {
      frame,
      shown: { width: facts.width, height: facts.height },
      turning: { rotation: film.facts.rotation, flip: film.flip },
      half: looking.half && awaitedFrame(looking) !== frame && !isWithin(frame, plan.whole),
      // the first pictures are there before anyone has asked, and are stepped through like the others
      moving: looking.half || looking.kind === 'opened',
    });
  } catch (problem) {
    lost.add(frame);
    failFrame(source, frame, new PictureLost(frame, String(problem)));
    return;
  } finally {
    copying.delete(frame);
    roomMade.ring();
    wakePump();
  }
  if (isClosed(source)) {
    picture.release();
    return;
  }
  learnFrom(picture);
  lost.delete(frame);
  const { looking, plan } = wanting();
  const { playhead, towards } = looking.walk;
  cache.put(picture, playhead, plan.range, plan.whole);
  if (frame === playhead && towards === 0 && !hasStopped(looking)) {
    asking.advance({ kind: 'arrived', quietUntil: performance.now() + jumpRestMs });
    setTimeout(wakePump, jumpRestMs);
  }
  if ((picture.whole || looking.half) && asking.give(frame, whileMoving(picture, looking.half)))
    setTimeout(() => keepPassed(source));
  if (frame === playhead) asking.giveWhole(cache.get(playhead));
}

function steeringOf(source: Source, decodeAgain: () => void): PumpSteering {
  const { asking, holdings, passed, roomMade, wanting } = source;
  const { order } = source.film.index;
  const { lost } = holdings;
  const waitedFor = (): number | null => jumpedTo(asking.looking());
  return {
    next: (run, isPending) => {
      const comes = (frame: number): boolean => isPending(frame) || lost.has(frame);
      return nextWanted(wanting(), order, run, comes, performance.now());
    },
    comesFrom: (run, frame) => comesFrom(run, order, frame),
    wants: (frame) => isWanted(wanting(), frame),
    needsNow: (frame) => isNeededNow(wanting(), frame),
    jumpedTo: waitedFor,
    deliver(frame, picture) {
      const waited = waitedFor();
      if (isClosed(source)) closeFrame(picture);
      else if (waited === null || waited === frame || !passed.hasRoom()) void keep(source, frame, picture);
      else passed.add(frame, picture);
    },
    room: () => (holdings.canCopy() ? Promise.resolve() : roomMade.wait()),
    lost(gone) {
      const looking = asking.looking();
      const awaited = awaitedFrame(looking);
      // a decoder that lost its way gives a picture when it is asked again from the start: the one waited for, once
      if (awaited !== null && gone.includes(awaited) && mayTryAgain(looking)) {
        asking.advance({ kind: 'tried-again' });
        setTimeout(decodeAgain);
        return;
      }
      for (const frame of gone) {
        lost.add(frame);
        failFrame(source, frame, new PictureLost(frame, 'it is damaged'));
      }
    },
    unreadable(problem) {
      const { playhead } = asking.looking().walk;
      failFrame(source, playhead, new PictureLost(playhead, String(problem), true));
    },
  };
}
