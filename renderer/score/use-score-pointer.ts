import { type RefObject, useCallback, useEffect, useRef } from 'react';
import type { EventMark } from '#core/swim-file/swim-schema';
import { type ClipClock, frameAtRealTime, realTimeOf } from '#core/timeline/clip-clock';
import { type OpenSwim, clockOf, useOpenSwim } from '../open-swim/open-swim';
import { goTo } from '../open-swim/stepping';
import { placeEventAt } from '../open-swim/event-commands';
import type { EventProposal } from '#core/follow/propose-events';
import { acceptDropped, lookAt, proposalsOf } from '../open-swim/proposals';
import { eventTime } from '#core/marks/event-time';
import { markPhrase } from '#core/marks/mark-words';
import { listenToPointer } from '../ui/listen-to-pointer';
import { panSpan, type ScoreAxis, zoomSpan } from '../open-swim/score-axis';

/** The frame whose start is nearest to a time: where a dragged glyph snaps. */
export function nearestFrame(clock: ClipClock, time: number): number {
  const at = frameAtRealTime(clock, time);
  const next = Math.min(at + 1, clock.table.starts.length - 1);
  return realTimeOf(clock, next) - time < time - realTimeOf(clock, at) ? next : at;
}

/** Our default: a press that wanders less than this many pixels is a click. */
const clickSlack = 3;

interface ScorePlace {
  readonly axis: ScoreAxis;
  readonly whole: { readonly from: number; readonly to: number };
}

export function useScorePointer(
  element: RefObject<SVGSVGElement | null>,
  axis: ScoreAxis,
  whole: ScorePlace['whole'],
) {
  const session = useOpenSwim();
  const now = useRef({ axis, whole });
  now.current = { axis, whole };
  const pick = useCallback(
    (mark: EventMark) => {
      session.view.setState({ selection: { kind: 'event', id: mark.id }, question: null });
      goTo(session, mark.frame);
    },
    [session],
  );

  useEffect(() => {
    const svg = element.current;
    return svg ? takeInHand(svg, session, now, pick) : undefined;
  }, [element, session, pick]);

  return pick;
}

/** Listens on the score until the answer is called. */
function takeInHand(
  svg: SVGSVGElement,
  session: OpenSwim,
  now: { readonly current: ScorePlace },
  pick: (mark: EventMark) => void,
): () => void {
  let held: { mark: EventMark; startX: number; offset: number; moved: boolean } | 'scrub' | null = null;
  let proposed: { readonly proposal: EventProposal; readonly startX: number; frame: number | null } | null =
    null;
  const xOf = (event: { readonly clientX: number }): number =>
    event.clientX - svg.getBoundingClientRect().left;
  const { document } = session;
  const frameAt = (x: number): number => nearestFrame(clockOf(document.swim()), now.current.axis.toTime(x));
  const scrub = (event: PointerEvent): void => goTo(session, frameAt(xOf(event)));
  const down = (event: PointerEvent): void => {
    const x = xOf(event);
    if (event.button !== 0 || held || x < now.current.axis.left - 12) return;
    svg.setPointerCapture(event.pointerId);
    const swim = document.swim();
    const guessed = under(event, 'data-proposal');
    const proposal = proposalsOf(swim).find((each) => each.id === guessed);
    if (proposal) {
      proposed = { proposal, startX: x, frame: null };
      lookAt(session, proposal);
      return;
    }
    const id = under(event, 'data-event');
    const mark = swim.events.find((each) => each.id === id);
    if (mark) {
      const offset = x - now.current.axis.toX(eventTime(clockOf(swim), mark));
      held = { mark, startX: x, offset, moved: false };
      pick(mark);
      return;
    }
    held = 'scrub';
    scrub(event);
  };
  const move = (event: PointerEvent): void => {
    const hand = held;
    const guess = proposed;
    if (guess) {
      const moved = xOf(event) - guess.startX;
      if (guess.frame === null && Math.abs(moved) < clickSlack) return;
      const { axis: shown } = now.current;
      guess.frame = frameAt(shown.toX(guess.proposal.time) + moved);
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
      const frame = frameAt(x - hand.offset);
      document.during(placeEventAt(hand.mark.id, frame), frame);
      goTo(session, frame);
    }
  };
  const putDown = (): void => {
    proposed = null;
    session.follow.setState({ dragged: null });
  };
  const up = (): void => {
    const guess = proposed;
    putDown();
    if (guess && guess.frame !== null) acceptDropped(session, guess.proposal, guess.frame);
    if (held && held !== 'scrub' && held.moved) document.commit();
    held = null;
  };
  const cancel = (): void => {
    const guess = proposed;
    if (guess && guess.frame !== null) goTo(session, guess.proposal.frame);
    if (guess) putDown();
    const hand = held;
    held = null;
    if (hand && hand !== 'scrub' && hand.moved) {
      document.cancel();
      goTo(session, hand.mark.frame);
    }
  };
  const giveUp = (): boolean => {
    if (!held && !proposed) return false;
    cancel();
    return true;
  };
  const wheel = (event: WheelEvent): void => {
    event.preventDefault();
    const { axis: shown, whole: all } = now.current;
    zoomOrPan(session, event, xOf(event), shown, all);
  };
  const stop = listenToPointer(svg, { down, move, up, cancel, wheel, giveUp });
  return () => {
    cancel();
    stop();
  };
}

/** The value of an attribute of what is under the pointer; null where it has none. */
const under = ({ target }: PointerEvent, attribute: string): string | null =>
  target instanceof Element ? (target.closest(`[${attribute}]`)?.getAttribute(attribute) ?? null) : null;

/** The wheel zooms the score about the pointer; sideways, or with Shift, it pans. */
function zoomOrPan(
  { view }: OpenSwim,
  { deltaX, deltaY, shiftKey }: WheelEvent,
  x: number,
  shown: ScoreAxis,
  all: { readonly from: number; readonly to: number },
): void {
  const span = view.getState().scoreSpan ?? all;
  const sideways = Math.abs(deltaX) > Math.abs(deltaY) ? deltaX : shiftKey ? deltaY : 0;
  if (sideways !== 0) {
    if (!view.getState().scoreSpan) return;
    const perPixel = (span.to - span.from) / (shown.right - shown.left);
    view.setState({ scoreSpan: panSpan(span, sideways * perPixel, all) });
    return;
  }
  const about = shown.toTime(Math.max(shown.left, x));
  view.setState({ scoreSpan: zoomSpan(span, about, Math.exp(-deltaY * 0.0018), all, 0.25) });
}
