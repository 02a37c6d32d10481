import type { EventKind } from '#core/marks/event-kind';
import type { SwimCard } from '#core/swim-file/swim-schema';
import type { BenchSession } from './bench-session';

/** One stroke in the order its moments come, from hand entry to the next hand entry (MEASURES §1 and §3). */
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

/** Starts the pass at its first moment. */
export function startPass(session: BenchSession): void {
  const steps = passFor(session.document.swim().card);
  session.view.setState({ passStep: 0, guidedKind: steps[0] ?? null, tool: 'point', nextLandmark: null });
}

export function endPass(session: BenchSession): void {
  session.view.setState({ passStep: null, guidedKind: null });
}

/** To the next moment, whether this one was marked or left out. */
export function passOn(session: BenchSession): void {
  const { passStep } = session.view.getState();
  if (passStep === null) return;
  const next = passFor(session.document.swim().card)[passStep + 1];
  if (next) {
    session.view.setState({ passStep: passStep + 1, guidedKind: next });
    return;
  }
  endPass(session);
  session.say('One whole pass is marked');
}

/** A mark was placed: the pass goes on when it is the one asked for. */
export function passHears(session: BenchSession, kind: EventKind): void {
  const { passStep, guidedKind } = session.view.getState();
  if (guidedKind !== kind) return;
  if (passStep === null) session.view.setState({ guidedKind: null });
  else passOn(session);
}
