import type { LockedMode, PairMode } from '#core/compare/pair-clock';
import { followFrame, framesAtPlace } from '#core/compare/pair-run';
import { frameAtRealTime } from '#core/timeline/clip-clock';
import { clampFrame } from '#core/timeline/frame-table';
import { clockOf } from '../open-swim/open-swim';
import { framesWithMarks, nextOf } from '../open-swim/selectors';
import { walkWay } from '../video/walk-way';
import { pairFrames, pairPart, pairSides, type PairSession } from './pair-session';
import { bothSwims, letterOf, type Which, withEach } from './pair-view';
import { pairWords } from '#core/words/pair';

/** The mode in which places are read: swims that run free are still read in seconds from their locks. */
export const readMode = (mode: PairMode): LockedMode => (mode === 'cycle' ? 'cycle' : 'time');

/** Puts both swims on frames; pictures follow as fast as they are decoded. */
export function showFrames(session: PairSession, frames: readonly number[]): void {
  for (const which of bothSwims) {
    const { view } = session.swims[which];
    const from = view.getState().frame;
    const to = frames[which] ?? from;
    view.setState({ frame: to, playing: false, ...(to === from ? {} : { towards: walkWay(from, to) }) });
  }
}

/** Sets one swim to a frame; locked, the other shows its own at that moment. */
export function setFrame(session: PairSession, lead: Which, frame: number): void {
  const { mode } = session.view.getState();
  session.view.setState({ lead, playing: false });
  const frames = withEach(pairFrames(session), lead, frame);
  showFrames(session, followFrame(pairSides(session), mode, { frames, lead }));
}

export function stepPair(session: PairSession, by: number): void {
  const { lead } = session.view.getState();
  setFrame(session, lead, pairFrames(session)[lead] + by);
}

/** To the leading swim's nearest mark before or after. */
export function stepToMark(session: PairSession, way: -1 | 1): void {
  const { lead } = session.view.getState();
  const { swim } = pairPart(session, lead);
  const found = nextOf(framesWithMarks(swim), pairFrames(session)[lead], way);
  if (found === null)
    session.say(
      way > 0
        ? pairWords('noMarkAfterFrame', { letterOf: letterOf(lead) })
        : pairWords('noMarkBefore', { letterOf: letterOf(lead) }),
    );
  else setFrame(session, lead, found);
}

export function goToEnd(session: PairSession, end: 'first' | 'last'): void {
  const { lead, stretches } = session.view.getState();
  setFrame(session, lead, stretches[lead][end]);
}

/** Shows the place under the pointer on the score: both swims when locked, the leading one when free. */
export function goToPlace(session: PairSession, place: number): void {
  const { mode, lead } = session.view.getState();
  const frames = framesAtPlace(pairSides(session), readMode(mode), place);
  session.view.setState({ playing: false });
  if (mode !== 'free') showFrames(session, frames);
  else showFrames(session, withEach(pairFrames(session), lead, frames[lead] ?? 0));
}

/** Both swims at the moments they are locked on. */
export function goToLock(session: PairSession): void {
  const sides = pairSides(session);
  session.view.setState({ playing: false });
  showFrames(
    session,
    sides.map((side) => frameAtRealTime(side.clock, side.lockTime)),
  );
}

/** Locks each swim where it stands: on the event marked there, or on the frame itself. */
export function lockHere(session: PairSession): void {
  const frames = pairFrames(session);
  const lockOf = (which: Which) => {
    const event = pairPart(session, which).swim.events.find((each) => each.frame === frames[which]);
    return event
      ? ({ on: 'event', id: event.id } as const)
      : ({ on: 'frame', frame: frames[which] } as const);
  };
  const { mode } = session.view.getState();
  session.view.setState({
    locks: [lockOf(0), lockOf(1)],
    mode: mode === 'free' ? 'time' : mode,
    scoreSpan: null,
  });
  session.say(mode === 'free' ? pairWords('lockedHereBoth') : pairWords('lockedHere'));
}

/** Begins or ends the leading swim's stretch at the frame it shows; null: the whole clip again. */
export function setStretch(session: PairSession, end: 'first' | 'last' | null): void {
  const { lead, stretches, mode } = session.view.getState();
  const { table } = clockOf(session.swims[lead].document.swim());
  const all = { first: 0, last: table.starts.length - 1 };
  const frame = clampFrame(table, pairFrames(session)[lead]);
  const was = stretches[lead];
  const next = end === null ? all : { ...was, [end]: frame };
  // a stretch set inside out begins or ends at the clip's own end
  const held =
    next.first < next.last
      ? next
      : end === 'first'
        ? { first: frame, last: all.last }
        : { first: 0, last: frame };
  if (held.first >= held.last) return;
  session.view.setState({ stretches: withEach(stretches, lead, held), scoreSpan: null });
  showFrames(session, followFrame(pairSides(session), mode, { frames: pairFrames(session), lead }));
}
