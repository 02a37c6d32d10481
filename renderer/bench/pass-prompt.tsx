import { eventWords } from '#core/marks/mark-words';
import { useOpenSwim, useSwim, useView } from '../open-swim/open-swim';
import { endPass, passBack, passFor, passOn } from '../open-swim/guided-pass';
import { padKeys } from './pad-keys';
import { useTip } from '../ui/use-tip';

/** What the guided pass asks for next. */
export function PassPrompt() {
  const tip = useTip();
  const session = useOpenSwim();
  const step = useView((state) => state.passStep);
  const steps = useSwim((swim) => passFor(swim.card));
  const kind = step === null ? undefined : steps[step];
  if (step === null || !kind) return null;
  return (
    <output className="stage-prompt">
      <strong>
        {step + 1} of {steps.length}: {eventWords[kind].toLowerCase()}
      </strong>
      <span>
        Press <kbd>{padKeys[kind].toUpperCase()}</kbd> when you see it; Space stops and starts the loop
      </span>
      <button
        type="button"
        disabled={step === 0}
        onClick={() => passBack(session)}
        title={tip('pass-back', 'To the moment before, and mark it again')}
      >
        Back <kbd>⌫</kbd>
      </button>
      <button
        type="button"
        onClick={() => passOn(session)}
        title={tip('pass-skip', "It can't be seen: go on to the next moment")}
      >
        Leave out <kbd>L</kbd>
      </button>
      <button type="button" onClick={() => endPass(session)} title={tip('put-away', 'End the pass')}>
        Done <kbd>Esc</kbd>
      </button>
    </output>
  );
}
