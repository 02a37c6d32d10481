import { CommandButton } from '../ui/command-button';
import { keyCap } from '../ui/key-cap';
import { useStore } from 'zustand';
import { landmarkNames } from '#core/marks/landmark';
import { useOpenSwim, useSwim, useView } from '../open-swim/open-swim';
import { landmarkWords } from '#core/marks/mark-words';
import { postureOn } from '../open-swim/selectors';
import { PointsPrompt } from './points-prompt';
import { StillPrompt } from './still-prompt';
import { endBodyLine } from './tools/body-line-tool';
import { endLine } from './tools/line-tool';
import { useKeyOf, useTip } from '../ui/use-tip';
import { stageWords } from '#core/words/stage';
import { rich } from '../ui/rich';

const lineAsks = {
  level: stageWords('drawAlongSomething'),
  surface: stageWords('drawAlongWater'),
  scale: stageWords('drawAlongLength'),
} as const;

/** What the tool in hand asks for next, with the keys that answer. */
export function StagePrompt() {
  const tip = useTip();
  const keyOf = useKeyOf();
  const session = useOpenSwim();
  const tool = useView((state) => state.tool);
  const next = useView((state) => state.nextLandmark);
  const draft = useView((state) => state.draftLine);
  const frame = useView((state) => state.frame);
  const posture = useSwim((swim) => postureOn(swim, frame));
  const asked = useStore(session.follow, (state) => state.asked);
  if (tool === 'point' || tool === 'look') return null;
  if (tool === 'plane' || tool === 'straight') return <PointsPrompt />;
  if (tool === 'still') return <StillPrompt />;
  if (tool !== 'body-line') {
    if (draft && !draft.open) return null;
    return (
      <output className="stage-prompt">
        <strong>{draft?.open ? stageWords('nowOtherEnd') : lineAsks[tool]}</strong>
        <span>{stageWords('dragOrClickBoth')}</span>
        <button
          type="button"
          onClick={() => endLine(session)}
          title={tip('put-away', stageWords('stopDrawingLine'))}
        >
          {rich(stageWords.parts('stopEsc', { key: keyOf('put-away'), kbd: keyCap }))}
        </button>
      </output>
    );
  }
  // asked beside the picture
  if (asked && next === asked.landmark && asked.frame === frame) return null;
  return (
    <output className="stage-prompt">
      {next ? (
        <>
          <strong>
            {stageWords('of', {
              indexOf: landmarkNames.indexOf(next) + 1,
              landmarkNames: landmarkNames.length,
              landmark: landmarkWords[next].toLowerCase(),
            })}
          </strong>
          <span>{stageWords('clickPressHold')}</span>
          <CommandButton command="leave-out" tip={stageWords('cantSeenFrame')}>
            {rich(stageWords.parts('hiddenH', { key: keyOf('leave-out'), kbd: keyCap }))}
          </CommandButton>
        </>
      ) : (
        <>
          <strong>{stageWords('bodyLineLaid')}</strong>
          <span>{stageWords('dragPointMend')}</span>
        </>
      )}
      {!posture && (
        <CommandButton command="copy-posture" tip={stageWords('startFromLast')}>
          {rich(stageWords.parts('copyLastN', { key: keyOf('copy-posture'), kbd: keyCap }))}
        </CommandButton>
      )}
      {posture && (
        <CommandButton command="back-one" tip={stageWords('takeBackLast')}>
          {rich(stageWords.parts('back', { key: keyOf('back-one'), kbd: keyCap }))}
        </CommandButton>
      )}
      <button
        type="button"
        onClick={() => endBodyLine(session)}
        title={tip('put-away', stageWords('leaveBodyLine'))}
      >
        {rich(stageWords.parts('doneEsc', { key: keyOf('put-away'), kbd: keyCap }))}
      </button>
    </output>
  );
}
