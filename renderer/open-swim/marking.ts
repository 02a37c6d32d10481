import { type EventKind, staffOf } from '#core/marks/event-kind';
import { type EventMark, plainMark, type SwimCard } from '#core/swim-file/swim-schema';
import { addEvent, sayOfEvent } from './event-commands';
import { makeId } from '../host/make-id';
import { markPhrase } from '#core/marks/mark-words';
import type { OpenQuestion } from './view-store';
import type { OpenSwim } from './open-swim';
import { passAfterMark } from './guided-pass';
import { selectedEvent } from './selection-actions';
import { whenShown } from './stepping';
import { openSwimWords } from '#core/words/open-swim';

export type Said = Pick<EventMark, 'hand' | 'breathTo' | 'metres'>;
const nothingSaid: Said = { hand: null, breathTo: null, metres: null };

/** What a kind of mark needs to be told, given the card: a question only where the drill leaves it open. */
export function whatIsSaid(kind: EventKind, card: SwimCard): Said | OpenQuestion['asks'] {
  if (kind === 'distance-mark') return 'metres';
  if (staffOf(kind) === 'hands') {
    if (card.arms === 'one-arm-alternating') return 'hand';
    if (card.arms === 'one-arm-left') return { ...nothingSaid, hand: 'left' };
    if (card.arms === 'one-arm-right') return { ...nothingSaid, hand: 'right' };
  }
  if (kind === 'breath') {
    const turns =
      card.arms.startsWith('one-arm') || card.sideUp === 'left-side' || card.sideUp === 'right-side';
    if (turns) return 'breath';
    return { ...nothingSaid, breathTo: 'front' };
  }
  return nothingSaid;
}

/** Places a mark, or selects the one that is there already: two alike on one frame would count twice. */
function placeMark(session: OpenSwim, kind: EventKind, frame: number, said: Said): void {
  const { document, view } = session;
  const twin = document
    .swim()
    .events.find((each) => each.kind === kind && each.frame === frame && each.hand === said.hand);
  if (twin) {
    view.setState({ selection: { kind: 'event', id: twin.id }, question: null });
    session.say(openSwimWords('frameAlreadyHas', { markPhrase: markPhrase(twin) }));
    // it is there, so a guided pass that asked for it has it
    passAfterMark(session, kind, twin.id);
    return;
  }
  const mark: EventMark = { ...plainMark, id: makeId(), kind, frame, ...said };
  document.run(addEvent(mark));
  view.setState({ selection: { kind: 'event', id: mark.id }, question: null });
  passAfterMark(session, kind, mark.id);
}

/** A pad was pressed: waits for the picture asked for, so that no mark lands on a frame the coach has not seen. */
export async function markHere(session: OpenSwim, kind: EventKind): Promise<void> {
  const { frame } = session.view.getState();
  if (session.film.getState().source && !(await whenShown(session))) {
    session.say(openSwimWords('pictureNotThere'));
    return;
  }
  const said = whatIsSaid(kind, session.document.swim().card);
  if (typeof said === 'string')
    session.view.setState({ question: { asks: said, kind, frame, markId: null } });
  else placeMark(session, kind, frame, said);
}

const questionOf = (kind: EventKind): OpenQuestion['asks'] | null => {
  if (kind === 'distance-mark') return 'metres';
  if (kind === 'breath') return 'breath';
  return staffOf(kind) === 'hands' ? 'hand' : null;
};

/** Whether a mark of this kind says anything besides its frame. */
export const canSayMore = (kind: EventKind): boolean => questionOf(kind) !== null;

/** Asks again what the chosen mark says: the hand, the side of the breath, the metres. */
export function askAgain(session: OpenSwim): void {
  const mark = selectedEvent(session);
  const asks = mark && questionOf(mark.kind);
  if (mark && asks)
    session.view.setState({ question: { asks, kind: mark.kind, frame: mark.frame, markId: mark.id } });
}

/** The open question is answered: a new mark is placed, or the one that is there says it from now on. */
export function answerQuestion(session: OpenSwim, said: Said): void {
  const { question } = session.view.getState();
  if (!question) return;
  if (question.markId === null) {
    placeMark(session, question.kind, question.frame, said);
    return;
  }
  const mark = session.document.swim().events.find(({ id }) => id === question.markId);
  if (mark) session.document.run(sayOfEvent(mark, said));
  session.view.setState({ question: null });
}
