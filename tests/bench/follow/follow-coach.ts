import { execa } from 'execa';
import { cropWindows } from '#core/follow/crop-window';
import { type FramePiece, followPieces, joinPieces } from '#core/follow/follow-pieces';
import { keepFollowed, piecesToFollow } from '#core/follow/keep-followed';
import { keepSurer } from '#core/follow/keep-surer';
import { linesToLay } from '#core/follow/lines-to-lay';
import { type MarkedPoint, markedPoints } from '#core/follow/marked-points';
import { nextQuestions } from '#core/follow/next-questions';
import { pointsAround } from '#core/follow/points-around';
import { questionContext } from '#core/follow/question-context';
import { seenBodyLength } from '#core/follow/seen-body-length';
import { type LandmarkName, landmarkNames } from '#core/marks/landmark';
import type { FollowedRun, Posture } from '#core/swim-file/swim-schema';
import { frameAtRealTime } from '#core/timeline/clip-clock';
import { findMediaTool } from '#electron/media/find-media-tool';
import { seenAt, stepOf } from '../../../shared-core/follow/coarse-task';
import type { ColourPicture } from '../../../shared-core/follow/colour-picture';
import { followPiece } from '../../../shared-core/follow/follow-piece';
import { framesAtOnce } from '../../../renderer/follow/follow-stretch';
import type { Vision } from '#core/follow/vision';
import { coloursOfPlanes } from '../../../renderer/video/colour-part';
import { normal, seeded } from '../../../sample-clips/model/seeded';
import type { Truth } from '../../../sample-clips/truth-schema';
import type { FollowClip } from './follow-clips';
import { followedSwim, kickMark } from './followed-swim';

export interface Film {
  readonly width: number;
  readonly height: number;
  /** The packed colours of every picture, whole. */
  readonly pictures: readonly Uint16Array[];
}

/** Every picture of a clip, decoded by ffmpeg. */
export async function readFilm(file: string, width: number, height: number): Promise<Film> {
  const tool = await findMediaTool('ffmpeg');
  if (!tool) throw new Error('needs ffmpeg');
  const { stdout } = await execa(
    tool.path,
    ['-v', 'error', '-i', file, '-f', 'rawvideo', '-pix_fmt', 'yuv420p', '-'],
    { encoding: 'buffer', maxBuffer: 4e9 },
  );
  return filmOf(stdout, width, height);
}

/** A film of planes of I420, picture after picture. */
export function filmOf(planes: Uint8Array, width: number, height: number): Film {
  const size = width * height;
  const all = (size * 3) / 2;
  const pictures = Array.from({ length: Math.floor(planes.length / all) }, (_, i) =>
    coloursOfPlanes(
      {
        bytes: planes.subarray(i * all, (i + 1) * all),
        brightness: { offset: 0, stride: width },
        blueness: { offset: size, stride: width / 2 },
        redness: { offset: (size * 5) / 4, stride: width / 2 },
        step: 1,
        across: 2,
        down: 2,
      },
      { x: 0, y: 0, width, height },
    ),
  );
  return { width, height, pictures };
}

/** Where a landmark truly is on a frame. */
export function trueAt(truth: Truth, frame: number, landmark: LandmarkName): { x: number; y: number } {
  const row = truth.points[frame] ?? [];
  const at = 2 * landmarkNames.indexOf(landmark);
  return { x: row[at] ?? Number.NaN, y: row[at + 1] ?? Number.NaN };
}

/** A coach who marks what is true, give or take. */
export interface DrawnCoach {
  mark(frame: number, landmark: LandmarkName): { x: number; y: number };
}
export function drawnCoach(truth: Truth, sdPixels: number, seed: number): DrawnCoach {
  const random = seeded(seed);
  return {
    mark(frame, landmark) {
      const { x, y } = trueAt(truth, frame, landmark);
      return { x: x + sdPixels * normal(random), y: y + sdPixels * normal(random) };
    },
  };
}

/** The frames on which the whole body is in the picture: what is out of it can be neither marked nor followed. */
export function wholeFrames(
  truth: Truth,
  picture: { readonly width: number; readonly height: number },
): { readonly first: number; readonly last: number } {
  const inside = truth.points.map((_, frame) =>
    landmarkNames.every((name) => {
      const { x, y } = trueAt(truth, frame, name);
      return x >= 8 && y >= 8 && x <= picture.width - 8 && y <= picture.height - 8;
    }),
  );
  return { first: inside.indexOf(true), last: inside.lastIndexOf(true) };
}

/**
 * The lines the app asks for: on kick tops the coach has marked (within a frame or two of the drawn ones), and where the film
 * begins and ends.
 */
export function coachLines(clip: FollowClip, truth: Truth): readonly number[] {
  const { width, height } = clip.scenario.camera;
  const { first, last } = wholeFrames(truth, { width, height });
  const random = seeded(11);
  const { swim, clock } = followedSwim(truth, width, height, armsOf(clip), [], []);
  const events = truth.events.flatMap(({ kind, time }, i) => {
    const frame = frameAtRealTime(clock, time) + Math.round(0.7 * normal(random));
    const inside = frame > first + nearEnd && frame < last - nearEnd;
    return (kind === 'kick-top' || kind === 'shoulder') && inside
      ? [kickMark(`t${i}`, kind, frame, 0, 0.001)]
      : [];
  });
  return [first, ...linesToLay({ ...swim, events }, clock), last];
}

/** A line so few frames from the film's end would be laid twice. */
const nearEnd = 3;

export const armsOf = ({ swim }: FollowClip): 'stroking' | 'stretched' =>
  swim === 'butterfly' ? 'stroking' : 'stretched';

/** Body lines on the first and last frame and about every `every` frames between. */
export function evenLines(first: number, last: number, every: number): readonly number[] {
  const count = Math.max(1, Math.round((last - first) / every));
  return Array.from({ length: count + 1 }, (_, i) => first + Math.round((i * (last - first)) / count));
}

export function layLines(coach: DrawnCoach, frames: readonly number[]): readonly Posture[] {
  return frames.map((frame) => ({
    frame,
    hidden: [],
    points: Object.fromEntries(landmarkNames.map((name) => [name, coach.mark(frame, name)])),
  }));
}

export interface FollowedFilm {
  readonly postures: readonly Posture[];
  readonly followed: readonly FollowedRun[];
  readonly clicks: ReadonlyMap<LandmarkName, number>;
  /** Pictures followed and what following them took, milliseconds, without decoding. */
  readonly pictures: number;
  readonly milliseconds: number;
}

/**
 * What a coach does in the app: lays some lines, follows, and answers what is asked, the most useful first, until
 * nothing is asked or a landmark has had its clicks. The same code follows as in the app.
 */
export function followAsCoach(
  vision: Vision,
  film: Film,
  truth: Truth,
  coach: DrawnCoach,
  lines: readonly number[],
  clicksEach: number,
): FollowedFilm {
  const arms = truth.events.some(({ kind }) => kind === 'entry') ? 'stroking' : 'stretched';
  let postures = layLines(coach, lines);
  let followed: readonly FollowedRun[] = [];
  const clicks = new Map<LandmarkName, number>(landmarkNames.map((name) => [name, lines.length]));
  let pictures = 0;
  let milliseconds = 0;
  const isMarked = (landmark: LandmarkName, frame: number): boolean =>
    postures.some((posture) => posture.frame === frame && posture.points[landmark] !== undefined);
  const followOpen = (): void => {
    const open = piecesToFollow(followPieces(markedPoints(postures)), followed, isMarked);
    const pieces = joinPieces(open, framesAtOnce);
    const began = performance.now();
    const runs = pieces.flatMap((piece) => followOne(vision, film, truth, postures, followed, piece));
    milliseconds += performance.now() - began;
    pictures += pieces.reduce((sum, { first, last }) => sum + last - first, 0);
    const length = seenBodyLength(postures) ?? film.height / 3;
    followed = keepFollowed(followed, pieces, keepSurer(followed, runs, postures, length));
  };
  followOpen();
  for (;;) {
    const { swim, clock } = followedSwim(truth, film.width, film.height, arms, postures, followed);
    const question = nextQuestions(followed, questionContext(swim, clock, isMarked)).find(
      ({ landmark }) => (clicks.get(landmark) ?? 0) < clicksEach,
    );
    if (!question) break;
    const { frame, landmark } = question;
    clicks.set(landmark, (clicks.get(landmark) ?? 0) + 1);
    const at = coach.mark(frame, landmark);
    const before = postures.find((posture) => posture.frame === frame);
    postures = before
      ? postures.map((each) =>
          each === before ? { ...each, points: { ...each.points, [landmark]: at } } : each,
        )
      : [...postures, { frame, hidden: [], points: { [landmark]: at } }].sort((a, b) => a.frame - b.frame);
    followOpen();
  }
  return { postures, followed, clicks, pictures, milliseconds };
}

/** Follows a film anew from marks, several times; pictures a second each time, without decoding. */
export function followingRates(
  vision: Vision,
  film: Film,
  truth: Truth,
  postures: readonly Posture[],
  times: number,
): readonly number[] {
  const pieces = joinPieces(followPieces(markedPoints(postures)), framesAtOnce);
  const pictures = pieces.reduce((sum, { first, last }) => sum + last - first, 0);
  return Array.from({ length: times }, () => {
    const began = performance.now();
    for (const piece of pieces) followOne(vision, film, truth, postures, [], piece);
    return (1000 * pictures) / (performance.now() - began);
  });
}

function followOne(
  vision: Vision,
  film: Film,
  truth: Truth,
  postures: readonly Posture[],
  followed: readonly FollowedRun[],
  piece: FramePiece,
): readonly FollowedRun[] {
  const bodyLength = seenBodyLength(postures) ?? film.height / 3;
  const step = stepOf(bodyLength);
  const marks: readonly MarkedPoint[] = markedPoints(postures, piece.first, piece.last);
  const windows = cropWindows(marks, piece.first, piece.last, bodyLength, film);
  const pictures = windows.map((part, i): ColourPicture => {
    const frame = piece.first + i;
    const seen = seenAt(part, step);
    const whole = film.pictures[frame];
    const colours = new Uint16Array(seen.width * seen.height);
    for (let row = 0; row < seen.height; row++) {
      const start = (part.y + step * row) * film.width + part.x;
      for (let column = 0; column < seen.width; column++)
        colours[row * seen.width + column] = whole?.[start + step * column] ?? 0;
    }
    return { frame, ...seen, colours };
  });
  const times = pictures.map(({ frame }) => truth.realTimes[frame] ?? 0);
  const around = pointsAround(postures, followed, piece, bodyLength).map((point) => ({
    ...point,
    time: truth.realTimes[point.frame] ?? 0,
  }));
  return followPiece(vision, { pictures, times, marks, around, bodyLength, step }, () => undefined).runs;
}
