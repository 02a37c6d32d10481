import { type RefObject, useEffect, useRef } from 'react';
import { type PicturePoint, type StagePoint, stagePoint } from '#core/units/brand';
import { useBench } from '../bench/bench-session';
import { heldInPicture, isPastEdge } from './held-in-picture';
import { panBy, type Size, type StageView, toPicture, zoomAt } from './stage-view';
import { stageTools } from './tools/stage-tools';

/** Our default: how near, in CSS pixels, a press counts as on a mark; wider for fingers. */
const reachOf = (event: PointerEvent): number => (event.pointerType === 'touch' ? 26 : 13);

type Hand =
  | { readonly does: 'nothing' }
  | { readonly does: 'pan'; readonly pointer: number; lastX: number; lastY: number }
  | { readonly does: 'tool'; readonly pointer: number }
  | { readonly does: 'pinch' };

/** Mouse, pen, touch and wheel on the stage: panning and zooming here, everything else to the tool in hand. */
export function useStagePointer(
  element: RefObject<HTMLElement | null>,
  place: {
    readonly view: StageView;
    readonly size: Size;
    readonly picture: Size;
    /** The view zooming out ends at; the fitted picture when left out. */
    readonly home?: StageView;
  },
  spaceHeld: RefObject<boolean>,
): void {
  const session = useBench();
  const now = useRef(place);
  now.current = place;

  useEffect(() => {
    const box = element.current;
    if (!box) return;
    const { view } = session;
    let hand: Hand = { does: 'nothing' };
    const touches = new Map<number, { x: number; y: number }>();
    const local = (event: MouseEvent) => {
      const edge = box.getBoundingClientRect();
      return stagePoint(event.clientX - edge.left, event.clientY - edge.top);
    };
    const held = (at: StagePoint): PicturePoint =>
      heldInPicture(toPicture(now.current.view, at), now.current.picture);
    const tool = () => stageTools[view.getState().tool];
    const pan = (dx: number, dy: number): void => {
      const { stage } = view.getState();
      if (!stage) return;
      view.setState({ stage: panBy(stage, dx, dy, now.current.picture, now.current.size) });
    };
    const press = (at: PicturePoint, reach: number): boolean => {
      const { picture } = now.current;
      if (!isPastEdge(at, picture, reach)) return tool().press(session, heldInPicture(at, picture), reach);
      // out there nothing is laid, but a point that a file put there can be fetched in
      const { id } = tool();
      if (id === 'look') return tool().press(session, at, reach);
      if ((id === 'point' || id === 'body-line') && stageTools.point.press(session, at, reach)) return true;
      if (id !== 'point') session.say('That is outside the picture: nothing is marked there');
      return false;
    };
    const letGo = (): void => {
      if (hand.does === 'tool') session.document.cancel();
      hand = { does: 'nothing' };
      view.setState({ dragging: false });
    };

    const down = (event: PointerEvent): void => {
      box.setPointerCapture(event.pointerId);
      const at = local(event);
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
      if (!panning && press(toPicture(now.current.view, at), reach)) {
        hand = { does: 'tool', pointer: event.pointerId };
        view.setState({ dragging: true, pointer: held(at) });
      } else {
        hand = { does: 'pan', pointer: event.pointerId, lastX: at.x, lastY: at.y };
      }
    };
    const move = (event: PointerEvent): void => {
      const at = local(event);
      if (hand.does === 'pinch') {
        const before = [...touches.values()];
        touches.set(event.pointerId, at);
        const after = [...touches.values()];
        const [p, q] = before;
        const [r, s] = after;
        if (!p || !q || !r || !s) return;
        const factor = Math.hypot(r.x - s.x, r.y - s.y) / Math.max(1, Math.hypot(p.x - q.x, p.y - q.y));
        const middle = stagePoint((r.x + s.x) / 2, (r.y + s.y) / 2);
        const { view: shown, picture, size, home } = now.current;
        const zoomed = zoomAt(shown, middle, factor, picture, size, home);
        view.setState({ stage: zoomed });
        if (zoomed) pan(middle.x - (p.x + q.x) / 2, middle.y - (p.y + q.y) / 2);
        return;
      }
      const point = held(at);
      if (hand.does === 'pan' && hand.pointer === event.pointerId) {
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
        tool().release(session, held(local(event)), reachOf(event) / now.current.view.scale);
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
      const { view: shown, picture, size, home } = now.current;
      if (event.shiftKey) {
        pan(-event.deltaY - event.deltaX, 0);
        return;
      }
      const factor = Math.exp(-event.deltaY * 0.0018);
      view.setState({ stage: zoomAt(shown, local(event), factor, picture, size, home) });
    };
    const onEscape = (event: KeyboardEvent): void => {
      if (event.key !== 'Escape' || hand.does !== 'tool') return;
      event.stopPropagation();
      letGo();
    };

    box.addEventListener('pointerdown', down);
    box.addEventListener('pointermove', move);
    box.addEventListener('pointerup', up);
    box.addEventListener('pointercancel', cancelled);
    box.addEventListener('pointerleave', leave);
    box.addEventListener('wheel', wheel, { passive: false });
    window.addEventListener('keydown', onEscape, true);
    return () => {
      letGo();
      box.removeEventListener('pointerdown', down);
      box.removeEventListener('pointermove', move);
      box.removeEventListener('pointerup', up);
      box.removeEventListener('pointercancel', cancelled);
      box.removeEventListener('pointerleave', leave);
      box.removeEventListener('wheel', wheel);
      window.removeEventListener('keydown', onEscape, true);
    };
  }, [element, session, spaceHeld]);
}
