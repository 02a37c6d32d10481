import { CommandButton } from '../ui/command-button';
import { keyCap } from '../ui/key-cap';
import { eventWords } from '#core/marks/mark-words';
import { useOpenSwim, useSwim, useView } from '../open-swim/open-swim';
import { endPass, passFor } from '../open-swim/guided-pass';
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
      <CommandButton command="pass-back" disabled={step === 0} tip={benchWords('momentBeforeMark')}>
        {rich(benchWords.parts('back', { key: keyOf('pass-back'), kbd: keyCap }))}
      </CommandButton>
      <CommandButton command="pass-skip" tip={benchWords('cantSeenGoNext')}>
        {rich(benchWords.parts('leaveOutL', { key: keyOf('pass-skip'), kbd: keyCap }))}
      </CommandButton>
      <button type="button" onClick={() => endPass(session)} title={tip('put-away', benchWords('endPass'))}>
        {rich(benchWords.parts('doneEsc', { key: keyOf('put-away'), kbd: keyCap }))}
      </button>
    </output>
  );
}
