import type { Point } from '#core/units/point';
import type { SwimCommand } from './swim-command';
import { openSwimWords } from '#core/words/open-swim';

/** Marks a thing that stands still on a frame, in the place of its mark there. A `thing` past the last is a new one. */
export function placeStill(thing: number, frame: number, { x, y }: Point): SwimCommand {
  return {
    name: openSwimWords('markThingStands'),
    frame,
    change: (draft) => {
      const { still } = draft.scene;
      const marks = still[thing];
      if (!marks) {
        still.push([{ frame, x, y }]);
        return;
      }
      const others = marks.filter((mark) => mark.frame !== frame);
      still[thing] = [...others, { frame, x, y }].sort((a, b) => a.frame - b.frame);
    },
  };
}

/** Takes one mark away; a thing without marks goes with it. */
export function removeStill(thing: number, frame: number): SwimCommand {
  return {
    name: openSwimWords('removeMarkThing'),
    frame,
    change: (draft) => {
      const left = (draft.scene.still[thing] ?? []).filter((mark) => mark.frame !== frame);
      if (left.length > 0) draft.scene.still[thing] = left;
      else draft.scene.still.splice(thing, 1);
    },
  };
}
