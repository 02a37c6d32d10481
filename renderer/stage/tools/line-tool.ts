import type { Point } from '#core/units/point';
import type { OpenSwim } from '../../open-swim/open-swim';
import { type SceneLineItem, setScene } from '../../open-swim/scene-commands';
import { nothingSelected } from '../../open-swim/view-store';
import type { StageTool } from './stage-tool';
import { leaveButton } from './leave-button';

/** Our default: a line shorter than this many "near" distances was a click, not a drag. */
const clickLength = 0.8;

export function startLine(session: OpenSwim, item: SceneLineItem): void {
  leaveButton();
  session.view.setState({
    tool: item,
    draftLine: null,
    selection: nothingSelected,
    nextLandmark: null,
    crosshair: null,
  });
}

export function endLine(session: OpenSwim): void {
  session.view.setState({ tool: 'point', draftLine: null, crosshair: null });
}

function finish(session: OpenSwim, item: SceneLineItem, a: Point, b: Point): void {
  // a known length is kept once its metres are said: until then it stays a draft
  if (item === 'scale') {
    session.view.setState({ draftLine: { item, a, b, open: false } });
    return;
  }
  session.document.run(setScene(item, { a, b }));
  endLine(session);
}

function lineTool(item: SceneLineItem): StageTool {
  return {
    id: item,
    press(session, at) {
      const { draftLine } = session.view.getState();
      if (draftLine?.open && draftLine.item === item)
        session.view.setState({ draftLine: { ...draftLine, b: at } });
      else session.view.setState({ draftLine: { item, a: at, b: at, open: true } });
      return true;
    },
    drag({ view }, at) {
      const { draftLine } = view.getState();
      if (draftLine?.open) view.setState({ draftLine: { ...draftLine, b: at } });
    },
    hover({ view }, at) {
      const { draftLine } = view.getState();
      if (draftLine?.open) view.setState({ draftLine: { ...draftLine, b: at } });
    },
    release(session, _at, reach) {
      const { draftLine } = session.view.getState();
      if (!draftLine?.open) return;
      const { a, b } = draftLine;
      if (Math.hypot(b.x - a.x, b.y - a.y) >= clickLength * reach) finish(session, item, a, b);
    },
  };
}

export const levelTool = lineTool('level');
export const surfaceTool = lineTool('surface');
export const scaleTool = lineTool('scale');

/** Enter at the crosshair: the first press sets one end, the second the other. */
export function placeLineEndAt(session: OpenSwim, at: Point): void {
  const { draftLine, tool } = session.view.getState();
  if (tool !== 'level' && tool !== 'surface' && tool !== 'scale') return;
  if (!draftLine?.open) session.view.setState({ draftLine: { item: tool, a: at, b: at, open: true } });
  else if (Math.hypot(at.x - draftLine.a.x, at.y - draftLine.a.y) > 0) finish(session, tool, draftLine.a, at);
}
