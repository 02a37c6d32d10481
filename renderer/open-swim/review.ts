import { type ReviewGroup, mostDoubtful, reviewGroups } from '#core/follow/review-groups';
import { eventTime } from '#core/marks/event-time';
import { openSwimWords } from '#core/words/open-swim';
import type { Swim } from '#core/swim-file/swim-schema';
import { keptWith } from '#core/units/kept-with';
import { clockOf, type OpenSwim } from './open-swim';
import { acceptTogether, lookAt, lookedAt, proposalsOf, rejectTogether } from './proposals';

/** What is proposed, by stroke, with what of it is decided. */
export const reviewGroupsOf = keptWith((swim: Swim): readonly ReviewGroup[] => {
  const clock = clockOf(swim);
  const marked = swim.events.map((mark) => ({ kind: mark.kind, time: eventTime(clock, mark) }));
  return reviewGroups(proposalsOf(swim), marked, swim.card);
});

/** The group of the moment looked at; the first with something to decide where none is. Null when all is decided. */
export function groupLookedAt(session: OpenSwim): ReviewGroup | null {
  const groups = reviewGroupsOf(session.document.swim());
  const looking = lookedAt(session);
  return (
    groups.find(({ open }) => open.some(({ id }) => id === looking?.id)) ??
    groups.find(({ open }) => open.length > 0) ??
    null
  );
}

/** Puts the review away; the whole picture is shown again. */
export function endReview(session: OpenSwim): void {
  session.follow.setState({ looking: null });
}

/** Accepts what is left of a stroke; the less sure moments are stayed with, to be looked at one by one. */
export function acceptGroup(session: OpenSwim): void {
  const group = groupLookedAt(session);
  if (!group) return;
  const sure = group.open.filter(({ unsure }) => !unsure);
  if (sure.length > 0) acceptTogether(session, sure);
  goOn(session, sure.length > 0 ? null : openSwimWords('lookOneByOne'));
}

export function rejectGroup(session: OpenSwim): void {
  const group = groupLookedAt(session);
  if (!group) return;
  rejectTogether(session, group.open);
  goOn(session, null);
}

/** To the first moment that is left; says so at the end. */
function goOn(session: OpenSwim, said: string | null): void {
  const next = groupLookedAt(session)?.open[0];
  if (next) lookAt(session, next);
  else endReview(session);
  if (!next) session.say(openSwimWords('everyMomentDecided'));
  else if (said) session.say(said);
}

/** To the moment that is known worst. */
export function lookAtMostDoubtful(session: OpenSwim): void {
  const worst = mostDoubtful(proposalsOf(session.document.swim()));
  if (!worst) return;
  session.follow.setState({ open: true });
  lookAt(session, worst);
}
