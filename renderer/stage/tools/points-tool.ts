import type { Point } from '#core/units/point';
import type { OpenSwim } from '../../open-swim/open-swim';
import { addStraight } from '../../open-swim/scene-commands';
import { type DraftPointsItem, nothingSelected } from '../../open-swim/view-store';
import type { StageTool } from './stage-tool';
import { leaveButton } from './leave-button';

/** Corners of a rectangle; and the fewest points that show a bend. */
export const planeCorners = 4;
export const leastStraightPoints = 3;

/** Takes up the tool that places one point after the other: corners of a rectangle, or points along a straight line. */
export function startPoints(session: OpenSwim, item: DraftPointsItem): void {
  leaveButton();
  session.view.setState({
    tool: item,
    draftLine: null,
    // a rectangle that is set is taken up again, to mend its corners
    draftPoints: item === 'plane' ? (session.document.swim().scene.plane?.corners ?? []) : [],
    selection: nothingSelected,
    nextLandmark: null,
    crosshair: null,
  });
}

export function endPoints(session: OpenSwim): void {
  session.view.setState({ tool: 'point', draftPoints: [], crosshair: null });
}

export function takeBackPoint(session: OpenSwim): void {
  const { draftPoints } = session.view.getState();
  session.view.setState({ draftPoints: draftPoints.slice(0, -1) });
}

/** Whether another point still belongs to what is being drawn. */
const wantsMore = (session: OpenSwim): boolean => {
  const { tool, draftPoints } = session.view.getState();
  return tool !== 'plane' || draftPoints.length < planeCorners;
};

export function addPointAt(session: OpenSwim, at: Point): void {
  if (!wantsMore(session)) return;
  const { draftPoints } = session.view.getState();
  session.view.setState({ draftPoints: [...draftPoints, at] });
}

/** Keeps the line drawn so far, when it has points enough, and is ready for the next. */
export function keepStraight(session: OpenSwim): void {
  const { draftPoints } = session.view.getState();
  if (draftPoints.length < leastStraightPoints) return;
  session.document.run(addStraight(draftPoints));
  session.view.setState({ draftPoints: [], crosshair: null });
}

/** The key of straight lines: takes up the tool, keeps a line that is drawn, or puts the tool away. */
export function straightKey(session: OpenSwim): void {
  const { tool, draftPoints } = session.view.getState();
  if (tool !== 'straight') startPoints(session, 'straight');
  else if (draftPoints.length >= leastStraightPoints) keepStraight(session);
  else endPoints(session);
}

function pointsTool(item: DraftPointsItem): StageTool {
  /** The point in hand: a new one, or one that was there and is moved. */
  let held: number | null = null;
  return {
    id: item,
    press(session, at, reach) {
      const { draftPoints } = session.view.getState();
      const near = draftPoints.findIndex((point) => Math.hypot(point.x - at.x, point.y - at.y) <= reach);
      if (near < 0 && !wantsMore(session)) return false;
      held = near < 0 ? draftPoints.length : near;
      if (near < 0) addPointAt(session, at);
      return true;
    },
    drag({ view }, at) {
      if (held === null) return;
      const points = [...view.getState().draftPoints];
      points[held] = at;
      view.setState({ draftPoints: points });
    },
    release() {
      held = null;
    },
  };
}

export const planeTool = pointsTool('plane');
export const straightTool = pointsTool('straight');
