import { type RefObject, useEffect, useRef } from 'react';
import type { Point } from '#core/units/point';
import { type OpenSwim, useOpenSwim } from '../open-swim/open-swim';
import { heldInPicture, isPastEdge } from '../open-swim/held-in-picture';
import { listenToPointer } from '../ui/listen-to-pointer';
import { fitView, panBy, type Size, type StageView, toPicture, zoomAt } from '../open-swim/stage-view';
import { stageTools } from './tools/stage-tools';
import { stageWords } from '#core/words/stage';

/** Our default: how near, in CSS pixels, a press counts as on a mark; wider for fingers. */
const reachOf = (event: PointerEvent): number => (event.pointerType === 'touch' ? 26 : 13);

type Hand =
  | { readonly does: 'nothing' }
  | { readonly does: 'pan'; readonly pointer: number; lastX: number; lastY: number }
  | { readonly does: 'tool'; readonly pointer: number }
  | { readonly does: 'pinch' };

interface StagePlace {
  readonly view: StageView;
  readonly size: Size;
  readonly picture: Size;
  /** The view zooming out ends at; the fitted picture when left out. */
  readonly home?: StageView;
  /** The view keeps the swimmer in it until the coach takes hold of the picture. */
  readonly kept?: boolean;
}

/** Mouse, pen, touch and wheel on the stage: panning and zooming here, everything else to the tool in hand. */
export function useStagePointer(
  element: RefObject<HTMLElement | null>,
  place: StagePlace,
  spaceHeld: RefObject<boolean>,
): void {
  const session = useOpenSwim();
  const now = useRef(place);
  now.current = place;

  useEffect(() => {
    const box = element.current;
    return box ? takeInHand(box, session, now, spaceHeld) : undefined;
  }, [element, session, spaceHeld]);
}

/** Listens on the stage until the answer is called. */
function takeInHand(
  box: HTMLElement,
  session: OpenSwim,
  now: { readonly current: StagePlace },
  spaceHeld: RefObject<boolean>,
): () => void {
  const { view } = session;
  let hand: Hand = { does: 'nothing' };
  const touches = new Map<number, { x: number; y: number }>();
  const held = (at: Point): Point => heldInPicture(toPicture(now.current.view, at), now.current.picture);
  const tool = () => stageTools[view.getState().tool];
  const pan = (dx: number, dy: number): void => panStage(session, now.current, dx, dy);
  const zoom = (about: Point, factor: number): void => zoomStage(session, now.current, about, factor);
  const letGo = (): void => {
    if (hand.does === 'tool') session.document.cancel();
    hand = { does: 'nothing' };
    view.setState({ dragging: false });
  };

  const down = (event: PointerEvent): void => {
    box.setPointerCapture(event.pointerId);
    const at = localTo(box, event);
    if (event.pointerType === 'touch') {
      touches.set(event.pointerId, at);
      if (touches.size === 2) {
        letGo();
        hand = { does: 'pinch' };
        return;
      }
    }
    const panning = event.button === 1 || (event.button === 0 && spaceHeld.current);
    if (!panning && event.button !== 0) return;
    if (view.getState().playing) view.setState({ playing: false });
    const reach = reachOf(event) / now.current.view.scale;
    if (!panning && pressAt(session, toPicture(now.current.view, at), reach, now.current.picture)) {
      hand = { does: 'tool', pointer: event.pointerId };
      view.setState({ dragging: true, pointer: held(at) });
    } else {
      hand = { does: 'pan', pointer: event.pointerId, lastX: at.x, lastY: at.y };
    }
  };
  const move = (event: PointerEvent): void => {
    const at = localTo(box, event);
    if (hand.does === 'pinch') {
      const before = [...touches.values()];
      touches.set(event.pointerId, at);
      const pinch = pinchOf(before, [...touches.values()]);
      if (!pinch) return;
      zoom(pinch.middle, pinch.factor);
      pan(pinch.dx, pinch.dy);
      return;
    }
    const point = held(at);
    if (hand.does === 'pan' && hand.pointer === event.pointerId) {
      if (isSlip(session, at.x - hand.lastX, at.y - hand.lastY)) return;
      pan(at.x - hand.lastX, at.y - hand.lastY);
      hand.lastX = at.x;
      hand.lastY = at.y;
    } else if (hand.does === 'tool' && hand.pointer === event.pointerId) {
      view.setState({ pointer: point });
      tool().drag(session, point);
    } else if (hand.does === 'nothing') {
      view.setState({ pointer: point });
      tool().hover?.(session, point);
    }
  };
  const up = (event: PointerEvent): void => {
    touches.delete(event.pointerId);
    if (hand.does === 'tool' && hand.pointer === event.pointerId) {
      tool().release(session, held(localTo(box, event)), reachOf(event) / now.current.view.scale);
    }
    if (hand.does !== 'pinch' || touches.size === 0) hand = { does: 'nothing' };
    view.setState({ dragging: false });
  };
  const leave = (): void => {
    if (hand.does === 'nothing') view.setState({ pointer: null });
  };
  const cancelled = (event: PointerEvent): void => {
    touches.delete(event.pointerId);
    letGo();
  };
  const wheel = (event: WheelEvent): void => {
    event.preventDefault();
    if (event.shiftKey) pan(-event.deltaY - event.deltaX, 0);
    else zoom(localTo(box, event), Math.exp(-event.deltaY * 0.0018));
  };
  const giveUp = (): boolean => {
    if (hand.does !== 'tool') return false;
    letGo();
    return true;
  };
  const stop = listenToPointer(box, { down, move, up, cancel: cancelled, leave, wheel, giveUp });
  return () => {
    letGo();
    stop();
  };
}

const localTo = (box: HTMLElement, event: MouseEvent): Point => {
  const edge = box.getBoundingClientRect();
  return { x: event.clientX - edge.left, y: event.clientY - edge.top };
};

function zoomStage({ view }: OpenSwim, place: StagePlace, about: Point, factor: number): void {
  const { picture, size, kept, home = fitView(picture, size) } = place;
  // zoomed out all the way, the picture stays whole instead of going back to the swimmer
  const zoomed = zoomAt(place.view, about, factor, picture, size, home) ?? (kept ? home : null);
  view.setState({ stage: zoomed });
}

/** Too little to take the picture out of Submark's hands: a press beside a mark is no pan. Our default, CSS pixels. */
const isSlip = ({ view }: OpenSwim, dx: number, dy: number): boolean =>
  view.getState().stage === null && Math.hypot(dx, dy) < 4;

function panStage({ view }: OpenSwim, place: StagePlace, dx: number, dy: number): void {
  const { picture, size, kept } = place;
  const stage = view.getState().stage ?? (kept ? place.view : null);
  if (stage) view.setState({ stage: panBy(stage, dx, dy, picture, size) });
}

/** Presses the tool in hand; false where nothing took the press. */
function pressAt(session: OpenSwim, at: Point, reach: number, picture: Size): boolean {
  const tool = stageTools[session.view.getState().tool];
  if (!isPastEdge(at, picture, reach)) return tool.press(session, heldInPicture(at, picture), reach);
  // out there nothing is laid, but a point that a file put there can be fetched in
  const { id } = tool;
  if (id === 'look') return tool.press(session, at, reach);
  if ((id === 'point' || id === 'body-line') && stageTools.point.press(session, at, reach)) return true;
  if (id !== 'point') session.say(stageWords('outsidePictureNothing'));
  return false;
}

interface Spot {
  readonly x: number;
  readonly y: number;
}

/** How two fingers moved: by what the picture grows, about where, and how far it goes. */
function pinchOf(
  [p, q]: readonly Spot[],
  [r, s]: readonly Spot[],
): { readonly factor: number; readonly middle: Point; readonly dx: number; readonly dy: number } | null {
  if (!p || !q || !r || !s) return null;
  const middle = { x: (r.x + s.x) / 2, y: (r.y + s.y) / 2 };
  return {
    factor: Math.hypot(r.x - s.x, r.y - s.y) / Math.max(1, Math.hypot(p.x - q.x, p.y - q.y)),
    middle,
    dx: middle.x - (p.x + q.x) / 2,
    dy: middle.y - (p.y + q.y) / 2,
  };
}
