import { type LandmarkName, landmarkNames } from '#core/marks/landmark';
import { hasPoint } from '#core/swim-file/has-point';
import type { Posture } from '#core/swim-file/swim-schema';
import type { Point } from '#core/units/point';
import type { OpenSwim } from '../../open-swim/open-swim';
import { landmarkWords } from '#core/marks/mark-words';
import {
  clearLandmark,
  copyPosture,
  hideLandmark,
  placeLandmark,
  setPosturePoint,
} from '../../open-swim/posture-commands';
import { postureOn } from '../../open-swim/selectors';
import { nothingSelected } from '../../open-swim/view-store';
import { nearestLandmark } from '../nearest-mark';
import { pointTool } from './point-tool';
import type { StageTool } from './stage-tool';
import { leaveButton } from './leave-button';
import { stageWords } from '#core/words/stage';

/** The first landmark, fingertip to toe, that is neither laid nor left out; null when the line is done. */
export function nextToLay(posture: Posture | null): LandmarkName | null {
  return (
    landmarkNames.find((name) => !posture?.points[name] && !(posture?.hidden.includes(name) ?? false)) ?? null
  );
}

function frameInHand(session: OpenSwim): number | null {
  const { frame, shownFrame } = session.view.getState();
  return shownFrame === frame ? frame : null;
}

export const isAnswered = (posture: Posture | null, landmark: LandmarkName): boolean =>
  posture?.points[landmark] !== undefined || (posture?.hidden.includes(landmark) ?? false);

/** Asks for the next open landmark of the frame on the stage. */
export function guideOn(session: OpenSwim): void {
  const { frame } = session.view.getState();
  const { asked } = session.follow.getState();
  const posture = postureOn(session.document.swim(), frame);
  // a point asked for in following comes before the rest of its frame's line
  const wanted = asked?.frame === frame && !isAnswered(posture, asked.landmark) ? asked.landmark : null;
  session.view.setState({ nextLandmark: wanted ?? nextToLay(posture) });
}

export function startBodyLine(session: OpenSwim, from?: LandmarkName): void {
  leaveButton();
  const { frame } = session.view.getState();
  session.view.setState({
    tool: 'body-line',
    selection: nothingSelected,
    draftLine: null,
    nextLandmark: from ?? nextToLay(postureOn(session.document.swim(), frame)),
  });
}

export function endBodyLine(session: OpenSwim): void {
  session.view.setState({ tool: 'point', nextLandmark: null, crosshair: null });
}

export function layNextAt(session: OpenSwim, at: Point): void {
  const frame = frameInHand(session);
  const { nextLandmark } = session.view.getState();
  if (frame === null || !nextLandmark) return;
  session.document.run(setPosturePoint(frame, nextLandmark, at));
  guideOn(session);
}

/** H: the point can't be seen on this frame. */
export function leaveOutNext(session: OpenSwim): void {
  const frame = frameInHand(session);
  const { nextLandmark } = session.view.getState();
  if (frame === null || !nextLandmark) return;
  session.document.run(hideLandmark(frame, nextLandmark));
  guideOn(session);
}

/** Backspace: takes back the landmark before the one asked for. */
export function backOne(session: OpenSwim): void {
  const frame = frameInHand(session);
  const { nextLandmark } = session.view.getState();
  if (frame === null) return;
  const at = nextLandmark ? landmarkNames.indexOf(nextLandmark) : landmarkNames.length;
  const before = landmarkNames[at - 1];
  if (!before) return;
  session.document.run(clearLandmark(frame, before));
  session.view.setState({ nextLandmark: before, selection: nothingSelected });
}

/** Lays the last body line before this frame here as a start; says why when it can't. */
export function copyLastForward(session: OpenSwim): void {
  const frame = frameInHand(session);
  if (frame === null) return;
  const last = session.document.swim().postures.findLast((each) => each.frame < frame && hasPoint(each));
  if (!last) {
    session.say(stageWords('noEarlierBody'));
    return;
  }
  session.document.run(copyPosture(last, frame));
  session.view.setState({ tool: 'body-line', nextLandmark: null });
  guideOn(session);
}

/** Laying and mending points. A press beside a laid point mends it when it moves, and lays the next one when it doesn't. */
function createBodyLineTool(): StageTool {
  /** A press on a laid point while another is asked for, until it has moved enough to be a drag. */
  let still: { readonly at: Point; readonly reach: number } | null = null;
  return {
    id: 'body-line',
    press(session, at, reach) {
      still = null;
      const frame = frameInHand(session);
      if (frame === null) return true;
      const { document, view } = session;
      const { nextLandmark } = view.getState();
      if (!nextLandmark) return pointTool.press(session, at, reach);
      if (nearestLandmark(postureOn(document.swim(), frame), at, reach / 2)) {
        // the hand passes over the hip in every pull: two points may lie on one place
        still = { at, reach };
        return pointTool.press(session, at, reach / 2);
      }
      document.begin(`lay ${landmarkWords[nextLandmark].toLowerCase()}`, frame);
      document.during(placeLandmark(frame, nextLandmark, at));
      view.setState({ crosshair: null, selection: { kind: 'landmark', frame, landmark: nextLandmark } });
      return true;
    },
    drag(session, at) {
      // our default: a quarter of a press's reach is a shaking hand
      if (still && Math.hypot(at.x - still.at.x, at.y - still.at.y) < still.reach / 4) return;
      still = null;
      const { selection } = session.view.getState();
      if (selection.kind === 'landmark' || selection.kind === 'scene') pointTool.drag(session, at);
    },
    release(session, at, reach) {
      if (still) {
        session.document.cancel();
        session.view.setState({ selection: nothingSelected });
        layNextAt(session, still.at);
        still = null;
        return;
      }
      const { selection, nextLandmark } = session.view.getState();
      pointTool.release(session, at, reach);
      // the landmark just laid lets go of the arrow keys; a mended one keeps them, for nudging
      if (selection.kind === 'landmark' && selection.landmark === nextLandmark) {
        session.view.setState({ selection: nothingSelected });
        guideOn(session);
      }
    },
  };
}

export const bodyLineTool = createBodyLineTool();
