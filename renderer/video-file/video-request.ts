import { frameAtPlace, type PairMode, type PairSide, timeAtPlace } from '#core/compare/pair-clock';
import type { PairPart } from '#core/compare/pair-part';
import type { VideoPlan, VideoSide } from '#core/video/video-plan';

/** What a video is asked of: the swims as they stand on the screen. */
export interface VideoRequest {
  readonly parts: readonly PairPart[];
  readonly sides: readonly Omit<VideoSide, 'frame'>[];
  readonly mode: PairMode;
  readonly lead: 0 | 1;
  /** The frames shown when it was asked for. */
  readonly frames: readonly number[];
  readonly sameLength: boolean;
  readonly lay: VideoPlan['lay'];
  /** File name without its ending. */
  readonly name: string;
}

/** The choices of the dialog. */
export interface VideoChoices {
  /** Places between which the video runs, on the axis of the score. */
  readonly from: number;
  readonly to: number;
  readonly slow: number;
  readonly rate: 30 | 60;
  readonly width: 1280 | 1920;
  readonly show: VideoPlan['show'];
  readonly keepInView: boolean;
  readonly caption: string;
  readonly sound: boolean;
}

const readMode = (mode: PairMode) => (mode === 'cycle' ? 'cycle' : 'time');

/** The plan of a video. Free of each other, swims begin where they stand, and only the length is chosen. */
export function videoPlanOf(request: VideoRequest, choices: VideoChoices): VideoPlan {
  const { parts, mode } = request;
  const { from, to, ...rest } = choices;
  const sides = parts.map(({ side }) => side);
  const place = readMode(mode);
  const [first] = sides;
  const frames =
    mode === 'free' ? request.frames : sides.map((side: PairSide) => frameAtPlace(side, place, from));
  const seconds = first ? timeAtPlace(first, place, to) - timeAtPlace(first, place, from) : 0;
  return {
    ...rest,
    sides: request.sides.map((side, index) => ({ ...side, frame: frames[index] ?? side.stretch.first })),
    mode,
    lead: request.lead,
    seconds: Math.max(0.02, seconds),
    sameLength: request.sameLength,
    lay: request.lay,
    sound: rest.sound && rest.slow === 1,
    name: request.name,
  };
}
