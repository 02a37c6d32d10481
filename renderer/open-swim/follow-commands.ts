import type { FramePiece } from '#core/follow/follow-pieces';
import { keepCamera } from '#core/follow/keep-camera';
import { keepFollowed } from '#core/follow/keep-followed';
import type { CameraRun, FollowedRun } from '#core/swim-file/swim-schema';
import type { SwimCommand } from './swim-command';
import { openSwimWords } from '#core/words/open-swim';

/** Keeps what was followed through these pieces, in the place of what was there. The coach's points stay as they are. */
export function setFollowed(
  pieces: readonly FramePiece[],
  runs: readonly FollowedRun[],
  camera: readonly CameraRun[] = [],
): SwimCommand {
  const frame = pieces[0]?.first;
  return {
    name: openSwimWords('followPoints'),
    ...(frame === undefined ? {} : { frame }),
    change: (draft) => {
      draft.followed = keepFollowed(draft.followed, pieces, runs).map(({ points, ...run }) => ({
        ...run,
        points: points.map(([x, y, confidence]): [number, number, number] => [x, y, confidence]),
      }));
      // what stays is part of the draft, which can't be cloned
      draft.cameraPath = [...keepCamera(draft.cameraPath, pieces, structuredClone(camera))];
    },
  };
}

export function dropFollowed(): SwimCommand {
  return {
    name: openSwimWords('forgetFollowedPoints'),
    change: (draft) => {
      draft.followed = [];
      draft.cameraPath = [];
    },
  };
}
