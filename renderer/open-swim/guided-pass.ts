import type { EventKind } from '#core/marks/event-kind';
import type { SwimCard } from '#core/swim-file/swim-schema';
import { removeEvent } from './event-commands';
import { nothingSelected } from './view-store';
import { type OpenSwim, clockOf } from './open-swim';
import { passWindow } from './pass-window';
import { openSwimWords } from '#core/words/open-swim';

/**
 * One stroke in the order its moments come, from hand entry past the next hand entry: seven moments of the hands and
 * four of the feet. The second catch is there so that the stroke is timed twice, entry to entry and catch to catch.
 */
const strokePass: readonly EventKind[] = [
  'entry',
  'kick-top',
  'kick-bottom',
  'catch',
  'shoulder',
  'kick-top',
  'navel',
  'exit',
  'kick-bottom',
  'entry',
  'catch',
];
/** Kicking alone: three kicks, so that a frequency comes out. */
const kickPass: readonly EventKind[] = [
  'kick-top',
  'kick-bottom',
  'kick-top',
  'kick-bottom',
  'kick-top',
  'kick-bottom',
  'kick-top',
];

export function passFor(card: Pick<SwimCard, 'stroke'>): readonly EventKind[] {
  return card.stroke === 'butterfly' ? strokePass : kickPass;
}

/** How slowly a moment is looped: an eighth, so that a quarter second of reaction is two pictures at 60 a second. */
const passPace = 0.125;

/** Starts the pass at its first moment, around the frame on the stage. */
export function startPass(session: OpenSwim): void {
  session.view.setState({ tool: 'point', nextLandmark: null, passMarks: [], pace: passPace });
  toStep(session, 0);
}

export function endPass(session: OpenSwim): void {
  if (session.view.getState().passStep === null) {
    session.view.setState({ guidedKind: null });
    return;
  }
  session.view.setState({ passStep: null, guidedKind: null, passMarks: [], loop: null, playing: false });
}

/** Asks for a step and loops the half second in which it is expected. */
function toStep(session: OpenSwim, step: number): void {
  const { view, document, film } = session;
  const swim = document.swim();
  const { passMarks, frame } = view.getState();
  const at = passMarks.findLastIndex((id, i) => id !== null && i < step);
  const mark = swim.events.find(({ id }) => id === passMarks[at]);
  const loop = passWindow(
    step,
    mark ? { step: at, frame: mark.frame } : null,
    frame,
    swim.events,
    swim.card.stroke === 'butterfly',
    clockOf(swim),
  );
  view.setState({
    passStep: step,
    guidedKind: passFor(swim.card)[step] ?? null,
    loop,
    frame: loop.first,
    playing: film.getState().source !== null,
  });
}

/** To the next moment, whether this one was marked (as `id`) or left out. */
export function passOn(session: OpenSwim, id: string | null = null): void {
  const { passStep, passMarks } = session.view.getState();
  if (passStep === null) return;
  session.view.setState({ passMarks: [...passMarks.slice(0, passStep), id] });
  if (passFor(session.document.swim().card)[passStep + 1]) {
    toStep(session, passStep + 1);
    return;
  }
  endPass(session);
  session.say(openSwimWords('oneWholePass'));
}

/** To the moment before; the mark it placed is taken away, to be placed again. */
export function passBack(session: OpenSwim): void {
  const { view, document } = session;
  const { passStep, passMarks } = view.getState();
  if (passStep === null || passStep === 0) return;
  const mark = document.swim().events.find(({ id }) => id === passMarks[passStep - 1]);
  if (mark) document.run(removeEvent(mark));
  view.setState({ passMarks: passMarks.slice(0, passStep - 1), selection: nothingSelected });
  toStep(session, passStep - 1);
}

/** A mark was placed: the pass goes on when it is the one asked for. */
export function passAfterMark(session: OpenSwim, kind: EventKind, id: string): void {
  const { passStep, guidedKind } = session.view.getState();
  if (guidedKind !== kind) return;
  if (passStep === null) session.view.setState({ guidedKind: null });
  else passOn(session, id);
}
