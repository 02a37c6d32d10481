import type { Draft } from 'immer';
import type { LandmarkName } from '#core/marks/landmark';
import type { Posture, Swim } from '#core/swim-file/swim-schema';
import type { Point } from '#core/units/point';
import { landmarkWords } from '#core/marks/mark-words';
import type { SwimChange, SwimCommand } from './swim-command';
import { openSwimWords } from '#core/words/open-swim';

/** The posture of a frame, made empty in its place (postures stay in order of frames) when there is none. */
function postureAt(draft: Draft<Swim>, frame: number): Draft<Posture> {
  const found = draft.postures.find((each) => each.frame === frame);
  if (found) return found;
  const fresh: Draft<Posture> = { frame, points: {}, hidden: [] };
  const after = draft.postures.findIndex((each) => each.frame > frame);
  draft.postures.splice(after < 0 ? draft.postures.length : after, 0, fresh);
  return draft.postures.find((each) => each.frame === frame) ?? fresh;
}

function dropWhenEmpty(draft: Draft<Swim>, frame: number): void {
  draft.postures = draft.postures.filter(
    (each) => each.frame !== frame || each.hidden.length > 0 || Object.keys(each.points).length > 0,
  );
}

/** The bare change of laying or moving a landmark, for drags. A laid landmark is no longer hidden. */
export function placeLandmark(frame: number, landmark: LandmarkName, point: Point): SwimChange {
  return (draft) => {
    const posture = postureAt(draft, frame);
    posture.points[landmark] = { x: point.x, y: point.y };
    posture.hidden = posture.hidden.filter((each) => each !== landmark);
  };
}

export function setPosturePoint(frame: number, landmark: LandmarkName, point: Point): SwimCommand {
  return {
    name: openSwimWords('lay', { landmark: landmarkWords[landmark].toLowerCase() }),
    frame,
    change: placeLandmark(frame, landmark, point),
  };
}

/** A followed point that the coach looked at and called right. */
export function keepFollowedPoint(frame: number, landmark: LandmarkName, point: Point): SwimCommand {
  return {
    name: openSwimWords('right', { landmark: landmarkWords[landmark].toLowerCase() }),
    frame,
    change: placeLandmark(frame, landmark, point),
  };
}

export function moveLandmark(frame: number, landmark: LandmarkName, point: Point): SwimCommand {
  return {
    name: openSwimWords('moveLandmark', { landmark: landmarkWords[landmark].toLowerCase() }),
    frame,
    change: placeLandmark(frame, landmark, point),
  };
}

export function hideLandmark(frame: number, landmark: LandmarkName): SwimCommand {
  return {
    name: openSwimWords('leaveOut', { landmark: landmarkWords[landmark].toLowerCase() }),
    frame,
    change: (draft) => {
      const posture = postureAt(draft, frame);
      delete posture.points[landmark];
      if (!posture.hidden.includes(landmark)) posture.hidden.push(landmark);
    },
  };
}

/** Takes a landmark back to "not laid yet", neither placed nor hidden. */
export function clearLandmark(frame: number, landmark: LandmarkName): SwimCommand {
  return {
    name: openSwimWords('clear', { landmark: landmarkWords[landmark].toLowerCase() }),
    frame,
    change: (draft) => {
      const posture = postureAt(draft, frame);
      delete posture.points[landmark];
      posture.hidden = posture.hidden.filter((each) => each !== landmark);
      dropWhenEmpty(draft, frame);
    },
  };
}

/** Lays a copy of an earlier posture on a frame as a start; points already laid there stay. */
export function copyPosture(from: Posture, frame: number): SwimCommand {
  return {
    name: openSwimWords('copyBodyLine'),
    frame,
    change: (draft) => {
      const posture = postureAt(draft, frame);
      for (const [landmark, point] of Object.entries(from.points) as [LandmarkName, Point][]) {
        posture.points[landmark] ??= { x: point.x, y: point.y };
      }
      posture.hidden = [...new Set([...posture.hidden, ...from.hidden])].filter(
        (landmark) => posture.points[landmark] === undefined,
      );
    },
  };
}
