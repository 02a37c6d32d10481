import { keyCap } from '../ui/key-cap';
import { eventWords } from '#core/marks/mark-words';
import { useOpenSwim, useSwim, useView } from '../open-swim/open-swim';
import { endPass, passBack, passFor, passOn } from '../open-swim/guided-pass';
import { useKeyOf, useTip } from '../ui/use-tip';
import { benchWords } from '#core/words/bench';
import { rich } from '../ui/rich';

/** What the guided pass asks for next. */
export function PassPrompt() {
  const tip = useTip();
  const keyOf = useKeyOf();
  const session = useOpenSwim();
  const step = useView((state) => state.passStep);
  const steps = useSwim((swim) => passFor(swim.card));
  const kind = step === null ? undefined : steps[step];
  if (step === null || !kind) return null;
  return (
    <output className="stage-prompt">
      <strong>
        {benchWords('of', { step: step + 1, steps: steps.length, event: eventWords[kind].toLowerCase() })}
      </strong>
      <span>
        {rich(
          benchWords.parts('pressWhenYou', {
            key: keyOf(`mark-${kind}`),
            kbd: keyCap,
          }),
        )}
      </span>
      <button
        type="button"
        disabled={step === 0}
        onClick={() => passBack(session)}
        title={tip('pass-back', benchWords('momentBeforeMark'))}
      >
        {rich(benchWords.parts('back', { key: keyOf('pass-back'), kbd: keyCap }))}
      </button>
      <button
        type="button"
        onClick={() => passOn(session)}
        title={tip('pass-skip', benchWords('cantSeenGoNext'))}
      >
        {rich(benchWords.parts('leaveOutL', { key: keyOf('pass-skip'), kbd: keyCap }))}
      </button>
      <button type="button" onClick={() => endPass(session)} title={tip('put-away', benchWords('endPass'))}>
        {rich(benchWords.parts('doneEsc', { key: keyOf('put-away'), kbd: keyCap }))}
      </button>
    </output>
  );
}
