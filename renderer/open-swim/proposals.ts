import { type EventProposal, proposeEvents } from '#core/follow/propose-events';
import type { Swim } from '#core/swim-file/swim-schema';
import { type OpenSwim, clockOf } from './open-swim';
import { whatIsSaid } from './marking';
import { goTo } from './stepping';
import { makeId } from '../host/make-id';
import { acceptProposals, rejectProposals } from './proposal-commands';
import { keptWith } from '#core/units/kept-with';

import { openSwimWords } from '#core/words/open-swim';

const none: readonly EventProposal[] = [];

/** What followed and seen points propose; nothing while a swim has none, so that dense hand-made lines are left alone. */
export const proposalsOf = keptWith((swim: Swim): readonly EventProposal[] =>
  swim.followed.length + swim.seen.length === 0 ? none : proposeEvents(swim, clockOf(swim)),
);

const saidOf =
  (session: OpenSwim) =>
  ({ kind }: EventProposal) => {
    const said = whatIsSaid(kind, session.document.swim().card);
    return typeof said === 'string' ? { hand: null, breathTo: null, metres: null } : said;
  };

/** The proposal the coach looks at; the first when there is none yet. */
export function lookedAt(session: OpenSwim): EventProposal | null {
  const proposals = proposalsOf(session.document.swim());
  const { looking } = session.follow.getState();
  return proposals.find(({ id }) => id === looking) ?? null;
}

export function lookAt(session: OpenSwim, proposal: EventProposal): void {
  session.follow.setState({ looking: proposal.id });
  goTo(session, proposal.frame);
}

/** To the next proposal after the one looked at, or after the playhead; round to the first after the last. */
export function lookAtNext(session: OpenSwim): void {
  const proposals = proposalsOf(session.document.swim());
  const from = lookedAt(session)?.frame ?? session.view.getState().frame - 1;
  const next = proposals.find(({ frame }) => frame > from) ?? proposals[0];
  if (!next) {
    session.say(openSwimWords('nothingProposed'));
    return;
  }
  session.follow.setState({ open: true });
  lookAt(session, next);
}

/** Accepts a proposal as it is, or on another frame. */
export function accept(session: OpenSwim, proposal: EventProposal, frame?: number): void {
  session.document.run(acceptProposals([proposal], makeId, saidOf(session), frame));
  goOn(session, proposal);
}

/** Accepts a proposal where it was dropped, and stays there with the mark chosen, to be moved on by single pictures. */
export function acceptDropped(session: OpenSwim, proposal: EventProposal, frame: number): void {
  const id = makeId();
  session.document.run(acceptProposals([proposal], () => id, saidOf(session), frame));
  session.follow.setState({ looking: null });
  session.view.setState({ selection: { kind: 'event', id }, question: null });
}

export function reject(session: OpenSwim, proposal: EventProposal): void {
  session.document.run(rejectProposals([proposal]));
  goOn(session, proposal);
}

/** Those that may be accepted together; the less sure ones are looked at one by one. */
export const sureProposals = (swim: Swim): readonly EventProposal[] =>
  proposalsOf(swim).filter(({ unsure }) => !unsure);

/** Accepts several as they are, in one step. */
export function acceptTogether(session: OpenSwim, proposals: readonly EventProposal[]): void {
  if (proposals.length > 0) session.document.run(acceptProposals(proposals, makeId, saidOf(session)));
}

export function rejectTogether(session: OpenSwim, proposals: readonly EventProposal[]): void {
  if (proposals.length > 0) session.document.run(rejectProposals(proposals));
}

export const acceptAll = (session: OpenSwim): void =>
  acceptTogether(session, sureProposals(session.document.swim()));

export const rejectAll = (session: OpenSwim): void =>
  rejectTogether(session, proposalsOf(session.document.swim()));

/** After a decision: the next proposal in time. */
function goOn(session: OpenSwim, decided: EventProposal): void {
  const next = proposalsOf(session.document.swim()).find(({ frame }) => frame >= decided.frame);
  if (next) lookAt(session, next);
  else session.follow.setState({ looking: null });
}
