import { useStore } from 'zustand';
import { landmarkNames } from '#core/marks/landmark';
import { useOpenSwim, useSwim, useView } from '../open-swim/open-swim';
import { landmarkWords } from '#core/marks/mark-words';
import { postureOn } from '../open-swim/selectors';
import { PointsPrompt } from './points-prompt';
import { StillPrompt } from './still-prompt';
import { backOne, copyLastForward, endBodyLine, leaveOutNext } from './tools/body-line-tool';
import { endLine } from './tools/line-tool';
import { useTip } from '../ui/use-tip';

const lineAsks = {
  level: 'Draw along something level: the lane line, the floor line or the surface.',
  surface: 'Draw along the water surface above the swimmer.',
  scale: 'Draw along a length you know, in the swimmer’s own plane.',
} as const;

/** What the tool in hand asks for next, with the keys that answer. */
export function StagePrompt() {
  const tip = useTip();
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
        <strong>{draft?.open ? 'Now the other end.' : lineAsks[tool]}</strong>
        <span>Drag, or click both ends. Enter works without a mouse.</span>
        <button
          type="button"
          onClick={() => endLine(session)}
          title={tip('put-away', 'Stop drawing the line')}
        >
          Stop <kbd>Esc</kbd>
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
            {landmarkNames.indexOf(next) + 1} of {landmarkNames.length}: {landmarkWords[next].toLowerCase()}
          </strong>
          <span>Click it; press and hold to see it larger.</span>
          <button
            type="button"
            onClick={() => leaveOutNext(session)}
            title={tip('leave-out', "It can't be seen on this frame")}
          >
            Hidden <kbd>H</kbd>
          </button>
        </>
      ) : (
        <>
          <strong>Body line laid.</strong>
          <span>Drag a point to mend it.</span>
        </>
      )}
      {!posture && (
        <button
          type="button"
          onClick={() => copyLastForward(session)}
          title={tip('copy-posture', 'Start from the last body line')}
        >
          Copy last <kbd>N</kbd>
        </button>
      )}
      {posture && (
        <button
          type="button"
          onClick={() => backOne(session)}
          title={tip('back-one', 'Take back the last point')}
        >
          Back <kbd>⌫</kbd>
        </button>
      )}
      <button
        type="button"
        onClick={() => endBodyLine(session)}
        title={tip('put-away', 'Leave the body line')}
      >
        Done <kbd>Esc</kbd>
      </button>
    </output>
  );
}
