import { type RefObject, useCallback, useEffect, useRef } from 'react';
import type { EventMark } from '#core/swim-file/swim-schema';
import { type ClipClock, frameAtRealTime, realTimeOf } from '#core/timeline/clip-clock';
import { clockOf, useBench } from '../bench/bench-session';
import { goTo } from '../bench/stepping';
import { placeEventAt } from '../state/event-commands';
import type { EventProposal } from '#core/follow/propose-events';
import { acceptDropped, lookAt, proposalsOf } from '../follow/proposals';
import { eventTime } from '#core/marks/event-time';
import { markPhrase } from '#core/marks/mark-words';
import { panSpan, type ScoreAxis, zoomSpan } from './score-axis';

/** The frame whose start is nearest to a time: where a dragged glyph snaps. */
export function nearestFrame(clock: ClipClock, time: number): number {
  const at = frameAtRealTime(clock, time);
  const next = Math.min(at + 1, clock.table.starts.length - 1);
  return realTimeOf(clock, next) - time < time - realTimeOf(clock, at) ? next : at;
}

/** Our default: a press that wanders less than this many pixels is a click. */
const clickSlack = 3;

export function useScorePointer(
  element: RefObject<SVGSVGElement | null>,
  axis: ScoreAxis,
  whole: { readonly from: number; readonly to: number },
) {
  const session = useBench();
  const now = useRef({ axis, whole });
  now.current = { axis, whole };
  const held = useRef<{ mark: EventMark; startX: number; offset: number; moved: boolean } | 'scrub' | null>(
    null,
  );
  const proposed = useRef<{
    readonly proposal: EventProposal;
    readonly startX: number;
    frame: number | null;
  } | null>(null);

  const xOf = useCallback(
    (event: { readonly clientX: number }) =>
      event.clientX - (element.current?.getBoundingClientRect().left ?? 0),
    [element],
  );

  const pick = useCallback(
    (mark: EventMark) => {
      session.view.setState({ selection: { kind: 'event', id: mark.id }, question: null });
      goTo(session, mark.frame);
    },
    [session],
  );

  useEffect(() => {
    const svg = element.current;
    if (!svg) return;
    const { view, document } = session;
    const scrub = (event: PointerEvent): void => {
      goTo(session, nearestFrame(clockOf(document.swim()), now.current.axis.toTime(xOf(event))));
    };
    const down = (event: PointerEvent): void => {
      const x = xOf(event);
      if (event.button !== 0 || held.current || x < now.current.axis.left - 12) return;
      svg.setPointerCapture(event.pointerId);
      const id =
        event.target instanceof Element
          ? event.target.closest('[data-event]')?.getAttribute('data-event')
          : null;
      const swim = document.swim();
      const guessed =
        event.target instanceof Element
          ? event.target.closest('[data-proposal]')?.getAttribute('data-proposal')
          : null;
      const proposal = proposalsOf(swim).find((each) => each.id === guessed);
      if (proposal) {
        proposed.current = { proposal, startX: x, frame: null };
        lookAt(session, proposal);
        return;
      }
      const mark = swim.events.find((each) => each.id === id);
      if (mark) {
        const offset = x - now.current.axis.toX(eventTime(clockOf(swim), mark));
        held.current = { mark, startX: x, offset, moved: false };
        pick(mark);
        return;
      }
      held.current = 'scrub';
      scrub(event);
    };
    const move = (event: PointerEvent): void => {
      const hand = held.current;
      const guess = proposed.current;
      if (guess) {
        const moved = xOf(event) - guess.startX;
        if (guess.frame === null && Math.abs(moved) < clickSlack) return;
        const { axis: shown } = now.current;
        guess.frame = nearestFrame(
          clockOf(document.swim()),
          shown.toTime(shown.toX(guess.proposal.time) + moved),
        );
        session.follow.setState({ dragged: { id: guess.proposal.id, frame: guess.frame } });
        goTo(session, guess.frame);
        return;
      }
      if (hand === 'scrub') scrub(event);
      else if (hand) {
        const x = xOf(event);
        if (!hand.moved && Math.abs(x - hand.startX) < clickSlack) return;
        if (!hand.moved) document.begin(`move ${markPhrase(hand.mark)}`, hand.mark.frame);
        hand.moved = true;
        const frame = nearestFrame(clockOf(document.swim()), now.current.axis.toTime(x - hand.offset));
        document.during(placeEventAt(hand.mark.id, frame), frame);
        goTo(session, frame);
      }
    };
    const putDown = (): void => {
      proposed.current = null;
      session.follow.setState({ dragged: null });
    };
    const up = (): void => {
      const guess = proposed.current;
      putDown();
      if (guess && guess.frame !== null) acceptDropped(session, guess.proposal, guess.frame);
      if (held.current && held.current !== 'scrub' && held.current.moved) document.commit();
      held.current = null;
    };
    const cancel = (): void => {
      const guess = proposed.current;
      if (guess && guess.frame !== null) goTo(session, guess.proposal.frame);
      if (guess) putDown();
      const hand = held.current;
      held.current = null;
      if (hand && hand !== 'scrub' && hand.moved) {
        document.cancel();
        goTo(session, hand.mark.frame);
      }
    };
    const onEscape = (event: KeyboardEvent): void => {
      if (event.key !== 'Escape' || !(held.current || proposed.current)) return;
      event.stopPropagation();
      cancel();
    };
    const wheel = (event: WheelEvent): void => {
      event.preventDefault();
      const { axis: shown, whole: all } = now.current;
      const span = view.getState().scoreSpan ?? all;
      const sideways =
        Math.abs(event.deltaX) > Math.abs(event.deltaY) ? event.deltaX : event.shiftKey ? event.deltaY : 0;
      if (sideways !== 0) {
        if (!view.getState().scoreSpan) return;
        const perPixel = (span.to - span.from) / (shown.right - shown.left);
        view.setState({ scoreSpan: panSpan(span, sideways * perPixel, all) });
        return;
      }
      const about = shown.toTime(Math.max(shown.left, xOf(event)));
      view.setState({ scoreSpan: zoomSpan(span, about, Math.exp(-event.deltaY * 0.0018), all, 0.25) });
    };
    svg.addEventListener('pointerdown', down);
    svg.addEventListener('pointermove', move);
    svg.addEventListener('pointerup', up);
    svg.addEventListener('pointercancel', cancel);
    svg.addEventListener('wheel', wheel, { passive: false });
    window.addEventListener('keydown', onEscape, true);
    return () => {
      cancel();
      svg.removeEventListener('pointerdown', down);
      svg.removeEventListener('pointermove', move);
      svg.removeEventListener('pointerup', up);
      svg.removeEventListener('pointercancel', cancel);
      svg.removeEventListener('wheel', wheel);
      window.removeEventListener('keydown', onEscape, true);
    };
  }, [element, session, xOf, pick]);

  return pick;
}
