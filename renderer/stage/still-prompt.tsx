import { useBench, useSwim, useView } from '../bench/bench-session';
import { endStill, nextStillThing, takeBackStill } from './tools/still-tool';

/** What the tool for things that stand still asks for next. */
export function StillPrompt() {
  const session = useBench();
  const index = useView((state) => state.stillThing);
  const frame = useView((state) => state.frame);
  const thing = useSwim((swim) => swim.scene.still[index]);
  const marks = thing?.length ?? 0;
  const here = thing?.some((mark) => mark.frame === frame) ?? false;
  const words =
    marks === 0
      ? 'Click something that stands still beside the swimmer: a seam of the floor line under the swimmer, a float.'
      : marks === 1
        ? here
          ? 'Now step to a frame far from this one, while the thing is still in sight.'
          : 'Click the same thing here.'
        : `Marked on ${marks} frames. More make it surer.`;
  return (
    <output className="stage-prompt">
      <strong>{words}</strong>
      <span>It tells how far the camera moved, at the swimmer’s distance.</span>
      {marks > 0 && (
        <button type="button" onClick={() => takeBackStill(session)} title="Take back a mark (Backspace)">
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
      <button type="button" onClick={() => endStill(session)} title="Stop (Esc)">
        Done <kbd>Esc</kbd>
      </button>
    </output>
  );
}
