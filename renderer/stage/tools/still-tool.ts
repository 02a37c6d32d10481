import type { Point } from '#core/units/point';
import type { OpenSwim } from '../../open-swim/open-swim';
import { placeStill, removeStill } from '../../open-swim/still-commands';
import { nothingSelected } from '../../open-swim/view-store';
import { leaveButton } from './leave-button';
import type { StageTool } from './stage-tool';

/** Takes up the tool that marks one thing standing still beside the swimmer on frame after frame. */
export function startStill(session: OpenSwim): void {
  leaveButton();
  const { still } = session.document.swim().scene;
  session.view.setState({
    tool: 'still',
    stillThing: Math.max(0, still.length - 1),
    draftLine: null,
    draftPoints: [],
    selection: nothingSelected,
    nextLandmark: null,
    crosshair: null,
  });
}

export function endStill(session: OpenSwim): void {
  session.view.setState({ tool: 'point', crosshair: null });
}

export function placeStillAt(session: OpenSwim, at: Point): void {
  const { frame, stillThing } = session.view.getState();
  session.document.run(placeStill(stillThing, frame, at));
}

/** Takes the thing's mark off the frame shown, else the one made last. */
export function takeBackStill(session: OpenSwim): void {
  const { frame, stillThing } = session.view.getState();
  const thing = session.document.swim().scene.still[stillThing];
  if (!thing) return;
  const at = thing.find((mark) => mark.frame === frame) ?? thing.at(-1);
  if (at) session.document.run(removeStill(stillThing, at.frame));
}

/** The next press marks a thing that is not marked yet. */
export function nextStillThing(session: OpenSwim): void {
  session.view.setState({ stillThing: session.document.swim().scene.still.length });
}

export const stillTool: StageTool = {
  id: 'still',
  press(session, at) {
    placeStillAt(session, at);
    return true;
  },
  // the mark goes where the pointer is let go, so that it can be set under the magnifier
  drag: () => undefined,
  release(session, at) {
    const { frame, stillThing } = session.view.getState();
    const mark = session.document.swim().scene.still[stillThing]?.find((each) => each.frame === frame);
    if (mark && (mark.x !== at.x || mark.y !== at.y)) placeStillAt(session, at);
  },
};
