import { useOpenSwim, useSwim, useView } from '../open-swim/open-swim';
import { endStill, nextStillThing, takeBackStill } from './tools/still-tool';
import { useTip } from '../ui/use-tip';

function asks(marks: number, here: boolean): string {
  if (marks === 0) return 'Click something that stands still beside the swimmer.';
  if (marks === 1) return here ? 'Now step far along the film.' : 'Click the same thing here.';
  return `Marked on ${marks} frames: the camera’s way is known.`;
}

/** What the tool for things that stand still asks for next. */
export function StillPrompt() {
  const tip = useTip();
  const session = useOpenSwim();
  const index = useView((state) => state.stillThing);
  const frame = useView((state) => state.frame);
  const thing = useSwim((swim) => swim.scene.still[index]);
  const marks = thing?.length ?? 0;
  const here = thing?.some((mark) => mark.frame === frame) ?? false;
  return (
    <output className="stage-prompt">
      <strong>{asks(marks, here)}</strong>
      {marks < 2 && (
        <span>
          {marks === 0
            ? 'A seam of the floor line under the swimmer, a float in the lane.'
            : 'While the thing is in sight.'}
        </span>
      )}
      {marks > 0 && (
        <button
          type="button"
          onClick={() => takeBackStill(session)}
          title={tip('still-back', 'Take back a mark')}
        >
          Back <kbd>⌫</kbd>
        </button>
      )}
      {marks > 1 && (
        <button
          type="button"
          onClick={() => nextStillThing(session)}
          title="Mark another thing, where the first has left the picture"
        >
          Another thing
        </button>
      )}
      <button type="button" onClick={() => endStill(session)} title={tip('put-away', 'Stop')}>
        Done <kbd>Esc</kbd>
      </button>
    </output>
  );
}
