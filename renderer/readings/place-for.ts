import type { MissingReason } from '#core/measures/reading';
import type { BenchSession } from '../bench/bench-session';
import { eventWords } from '#core/marks/mark-words';
import { startBodyLine } from '../stage/tools/body-line-tool';
import { startLine } from '../stage/tools/line-tool';

/** What "Place" starts for a missing thing; null when nothing on the bench can mend it. */
export function placeFor(session: BenchSession, reason: MissingReason): (() => void) | null {
  switch (reason.code) {
    case 'needs-events': {
      const { kind } = reason;
      return () => {
        session.view.setState({ guidedKind: kind });
        session.say(`Step to a ${eventWords[kind].toLowerCase()} and press its pad`);
      };
    }
    case 'needs-landmark':
    case 'needs-denser-trace': {
      const { landmark } = reason;
      return () => startBodyLine(session, landmark);
    }
    case 'needs-body-length':
      return () => startBodyLine(session);
    case 'needs-scene': {
      const { item } = reason;
      if (item === 'travel') return () => session.view.setState({ asksTravel: true });
      return () => startLine(session, item);
    }
    default:
      return null;
  }
}
