import { type RefObject, useCallback, useEffect, useRef } from 'react';
import type { EventMark } from '#core/swim-file/swim-schema';
import { panSpan, type ScoreAxis, zoomSpan } from '../open-swim/score-axis';
import { usePair } from './pair-session';
import { goToPlace, setFrame } from './pair-steps';
import type { Which } from './pair-view';

interface Span {
  readonly from: number;
  readonly to: number;
}

/** Scrubbing both swims along the common axis, and the wheel that shows more or less of it. */
export function usePairScorePointer(
  element: RefObject<SVGSVGElement | null>,
  axis: ScoreAxis,
  whole: Span,
): (which: Which, event: EventMark) => void {
  const session = usePair();
  const now = useRef({ axis, whole });
  now.current = { axis, whole };
  useEffect(() => {
    const svg = element.current;
    if (!svg) return;
    let scrubbing = false;
    const xOf = (event: MouseEvent): number => event.clientX - svg.getBoundingClientRect().left;
    const scrub = (event: PointerEvent): void => goToPlace(session, now.current.axis.toTime(xOf(event)));
    const down = (event: PointerEvent): void => {
      if (event.button !== 0 || xOf(event) < now.current.axis.left - 12) return;
      svg.setPointerCapture(event.pointerId);
      scrubbing = true;
      scrub(event);
    };
    const move = (event: PointerEvent): void => {
      if (scrubbing) scrub(event);
    };
    const up = (): void => {
      scrubbing = false;
    };
    const wheel = (event: WheelEvent): void => {
      event.preventDefault();
      const { axis: shown, whole: all } = now.current;
      const held = session.view.getState().scoreSpan;
      const span = held ?? all;
      const sideways =
        Math.abs(event.deltaX) > Math.abs(event.deltaY) ? event.deltaX : event.shiftKey ? event.deltaY : 0;
      if (sideways !== 0) {
        if (!held) return;
        const perPixel = (span.to - span.from) / (shown.right - shown.left);
        session.view.setState({ scoreSpan: panSpan(span, sideways * perPixel, all) });
        return;
      }
      const about = shown.toTime(Math.max(shown.left, xOf(event)));
      session.view.setState({
        scoreSpan: zoomSpan(span, about, Math.exp(-event.deltaY * 0.0018), all, 0.25),
      });
    };
    svg.addEventListener('pointerdown', down);
    svg.addEventListener('pointermove', move);
    svg.addEventListener('pointerup', up);
    svg.addEventListener('pointercancel', up);
    svg.addEventListener('wheel', wheel, { passive: false });
    return () => {
      svg.removeEventListener('pointerdown', down);
      svg.removeEventListener('pointermove', move);
      svg.removeEventListener('pointerup', up);
      svg.removeEventListener('pointercancel', up);
      svg.removeEventListener('wheel', wheel);
    };
  }, [element, session]);
  return useCallback((which, event) => setFrame(session, which, event.frame), [session]);
}
