import { describe, expect, it } from 'vitest';
import { createFollowStore } from '../../../../renderer/open-swim/follow-store';
import type { OpenSwim } from '../../../../renderer/open-swim/open-swim';
import { createSwimDocument } from '../../../../renderer/open-swim/swim-document';
import { createViewStore } from '../../../../renderer/open-swim/view-store';
import { bodyLineTool } from '../../../../renderer/stage/tools/body-line-tool';
import { aSwim } from '../../a-swim';

const reach = 13;
const wrist = { x: 600, y: 300 };

/** Frame 7 with a wrist laid and the hip asked for; only what laying touches is there. */
function askedForHip(): OpenSwim {
  const document = createSwimDocument(
    aSwim({ postures: [{ frame: 7, points: { wrist }, hidden: ['fingertip', 'elbow', 'shoulder', 'ear'] }] }),
  );
  const view = createViewStore({ frame: 7, tool: 'body-line', nextLandmark: 'hip' });
  view.setState({ shownFrame: 7 });
  const parts: Pick<OpenSwim, 'document' | 'view' | 'follow'> = {
    document,
    view,
    follow: createFollowStore(),
  };
  return parts as OpenSwim;
}

const pointsOf = (session: OpenSwim) => session.document.swim().postures[0]?.points;

describe('laying a point where another one lies', () => {
  it('lays it: the hand passes right over the hip', () => {
    const session = askedForHip();
    const at = { x: 602, y: 301 };
    bodyLineTool.press(session, at, reach);
    bodyLineTool.drag(session, { x: 603, y: 301 });
    bodyLineTool.release(session, { x: 603, y: 301 }, reach);
    expect(pointsOf(session)).toEqual({ wrist, hip: { x: 602, y: 301 } });
    expect(session.view.getState().nextLandmark).toBe('knee');
    session.document.undo();
    expect(pointsOf(session)).toEqual({ wrist });
  });

  it('mends the one that lies there when it is dragged, and goes on asking', () => {
    const session = askedForHip();
    bodyLineTool.press(session, { x: 602, y: 301 }, reach);
    bodyLineTool.drag(session, { x: 640, y: 320 });
    bodyLineTool.release(session, { x: 640, y: 320 }, reach);
    expect(pointsOf(session)).toEqual({ wrist: { x: 640, y: 320 } });
    expect(session.view.getState().nextLandmark).toBe('hip');
  });
});
