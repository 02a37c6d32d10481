import { keyCap } from '../ui/key-cap';
import { useOpenSwim, useSwim, useView } from '../open-swim/open-swim';
import { endStill, nextStillThing, takeBackStill } from './tools/still-tool';
import { useKeyOf, useTip } from '../ui/use-tip';
import { stageWords } from '#core/words/stage';
import { rich } from '../ui/rich';

function asks(marks: number, here: boolean): string {
  if (marks === 0) return stageWords('clickSomethingStands');
  if (marks === 1) return here ? stageWords('nowStepFarAlong') : stageWords('clickSameThing');
  return stageWords('markedFramesCameras', { marks });
}

/** What the tool for things that stand still asks for next. */
export function StillPrompt() {
  const tip = useTip();
  const keyOf = useKeyOf();
  const session = useOpenSwim();
  const index = useView((state) => state.stillThing);
  const frame = useView((state) => state.frame);
  const thing = useSwim((swim) => swim.scene.still[index]);
  const marks = thing?.length ?? 0;
  const here = thing?.some((mark) => mark.frame === frame) ?? false;
  return (
    <output className="stage-prompt">
      <strong>{asks(marks, here)}</strong>
      {marks < 2 && <span>{marks === 0 ? stageWords('seamFloorLine') : stageWords('whileThingSight')}</span>}
      {marks > 0 && (
        <button
          type="button"
          onClick={() => takeBackStill(session)}
          title={tip('still-back', stageWords('takeBackMark'))}
        >
          {rich(stageWords.parts('back', { key: keyOf('still-back'), kbd: keyCap }))}
        </button>
      )}
      {marks > 1 && (
        <button type="button" onClick={() => nextStillThing(session)} title={stageWords('markAnotherThing')}>
          {stageWords('anotherThing')}
        </button>
      )}
      <button type="button" onClick={() => endStill(session)} title={tip('put-away', stageWords('stop'))}>
        {rich(stageWords.parts('doneEsc', { key: keyOf('put-away'), kbd: keyCap }))}
      </button>
    </output>
  );
}
