import { clampFrame } from '#core/timeline/frame-table';
import { landmarkNames } from '#core/marks/landmark';
import { moveEvent, removeEvent } from './event-commands';
import { clearLandmark, moveLandmark } from './posture-commands';
import { placeSceneEnd, placeStraightPoint, removeStraight, sceneWords, setScene } from './scene-commands';
import { postureOn } from './selectors';
import { heldInPicture } from './held-in-picture';
import { nothingSelected } from './view-store';
import { type OpenSwim, clockOf } from './open-swim';
import { goTo } from './stepping';
import { openSwimWords } from '#core/words/open-swim';

export function selectedEvent(session: OpenSwim) {
  const { selection } = session.view.getState();
  if (selection.kind !== 'event') return null;
  return session.document.swim().events.find((each) => each.id === selection.id) ?? null;
}

/** Moves the selected glyph by frames, and the stage with it. */
export function nudgeEvent(session: OpenSwim, frames: number): void {
  const mark = selectedEvent(session);
  if (!mark) return;
  const to = clampFrame(clockOf(session.document.swim()).table, mark.frame + frames);
  if (session.document.run(moveEvent(mark, to))) goTo(session, to);
}

/** Moves the selected landmark, scene end, point of a straight line or the crosshair by picture pixels. */
export function nudgePoint(session: OpenSwim, dx: number, dy: number): void {
  const { selection, crosshair } = session.view.getState();
  const { document, view } = session;
  const moved = (from: { readonly x: number; readonly y: number }) =>
    heldInPicture({ x: from.x + dx, y: from.y + dy }, document.swim().clip);
  if (crosshair) {
    view.setState({ crosshair: moved(crosshair) });
  } else if (selection.kind === 'landmark') {
    const point = postureOn(document.swim(), selection.frame)?.points[selection.landmark];
    if (point) document.run(moveLandmark(selection.frame, selection.landmark, moved(point)));
  } else if (selection.kind === 'scene') {
    const { item, end } = selection;
    const { scene } = document.swim();
    const point = (item === 'scale' ? scene.scale?.line : scene[item])?.[end];
    if (point)
      document.run({
        name: openSwimWords('moveScene', { scene: sceneWords[item].toLowerCase() }),
        change: placeSceneEnd(item, end, moved(point)),
      });
  } else if (selection.kind === 'straight') {
    const { line, point } = selection;
    const at = document.swim().scene.straights[line]?.[point];
    if (at)
      document.run({
        name: openSwimWords('movePointStraight'),
        change: placeStraightPoint(line, point, moved(at)),
      });
  }
}

export function removeSelected(session: OpenSwim): void {
  const { document, view } = session;
  const { selection } = view.getState();
  const mark = selectedEvent(session);
  if (mark) document.run(removeEvent(mark));
  else if (selection.kind === 'landmark') document.run(clearLandmark(selection.frame, selection.landmark));
  else if (selection.kind === 'scene') document.run(setScene(selection.item, null));
  else if (selection.kind === 'straight') document.run(removeStraight(selection.line));
  else return;
  view.setState({ selection: nothingSelected });
}

/** Whether arrow keys move a point on the picture now instead of stepping frames. */
export function pointIsHeld(session: OpenSwim): boolean {
  const { selection, crosshair, shownFrame } = session.view.getState();
  if (crosshair) return true;
  if (selection.kind === 'landmark')
    return selection.frame === shownFrame && landmarkNames.includes(selection.landmark);
  return selection.kind === 'scene' || selection.kind === 'straight';
}
