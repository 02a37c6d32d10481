import type { CameraRun } from '#core/swim-file/swim-schema';
import type { SwimChange, SwimCommand } from './swim-command';
import { openSwimWords } from '#core/words/open-swim';

/** What one look at the whole found of the camera, in the place of all that was known. */
export const keepLook =
  (run: CameraRun): SwimChange =>
  (draft) => {
    draft.cameraPath = [structuredClone(run)];
  };

/** The coach's word that the camera stood from one frame to another; what was found of it there goes. */
export function stoodStill({ first, last }: { readonly first: number; readonly last: number }): SwimCommand {
  return {
    name: openSwimWords('sayCameraStood'),
    change: (draft) => {
      draft.cameraPath = [{ frames: [first, last], rows: [], moved: [], turned: null }];
    },
  };
}
