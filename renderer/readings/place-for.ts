import type { EventKind } from '#core/marks/event-kind';
import type { MissingReason } from '#core/measures/reading';
import type { OpenSwim } from '../open-swim/open-swim';
import type { LandmarkName } from '#core/marks/landmark';
import { eventWords, landmarkWords } from '#core/marks/mark-words';
import { isInPicture } from '#core/measures/body/points/inside-picture';
import { goTo } from '../open-swim/stepping';
import { startBodyLine } from '../stage/tools/body-line-tool';
import { startLine } from '../stage/tools/line-tool';
import { startStill } from '../stage/tools/still-tool';
import { readingsWords } from '#core/words/readings';

/** What "Place" starts for a missing thing; null when nothing on the bench can mend it. */
export function placeFor(session: OpenSwim, reason: MissingReason): (() => void) | null {
  const mark = (kind: EventKind) => (): void => {
    session.view.setState({ guidedKind: kind });
    session.say(readingsWords('stepPressIts', { event: eventWords[kind].toLowerCase() }));
  };
  switch (reason.code) {
    case 'needs-events':
    case 'needs-event-beside':
      return mark(reason.kind);
    case 'needs-reading':
      switch (reason.reading) {
        case 'kick-frequency':
          return mark('kick-top');
        case 'stroke-rate':
          return mark('entry');
        case 'kick-amplitude-toe':
          return () => startBodyLine(session, 'toe');
        case 'body-wave-speed':
          return () => startBodyLine(session, 'shoulder');
      }
      break;
    case 'outside-picture': {
      const { landmark } = reason;
      return () => showOutside(session, landmark);
    }
    case 'needs-landmark':
    case 'needs-landmark-at':
    case 'needs-denser-trace': {
      const { landmark } = reason;
      return () => startBodyLine(session, landmark);
    }
    case 'needs-body-length':
    case 'seen-not-proved':
      return () => startBodyLine(session);
    case 'needs-still-thing':
      return () => startStill(session);
    case 'marks-contradict': {
      const [first] = reason.frames;
      return first === undefined ? null : () => goTo(session, first);
    }
    case 'needs-scene': {
      const { item } = reason;
      if (item === 'travel') return () => session.view.setState({ asksTravel: true });
      return () => startLine(session, item);
    }
    default:
      return null;
  }
  return null;
}

/** Goes to the first body line with that landmark outside the picture, and takes it in hand. */
function showOutside(session: OpenSwim, landmark: LandmarkName): void {
  const { clip, postures } = session.document.swim();
  const first = postures.find(
    ({ points: { [landmark]: point } }) => point !== undefined && !isInPicture(point, clip),
  );
  if (!first) return;
  goTo(session, first.frame);
  session.view.setState({ tool: 'point', selection: { kind: 'landmark', frame: first.frame, landmark } });
  session.say(readingsWords('moveIntoPicture', { landmark: landmarkWords[landmark].toLowerCase() }));
}
