import { useStore } from 'zustand';
import { useTip } from '../ui/use-tip';
import { useOpenSwim, useView } from '../open-swim/open-swim';
import { scoreWords } from '#core/words/score';

const parts = [
  ['score', 'score', scoreWords('rhythmAlongClip')],
  ['overlaid', 'overlaid', scoreWords('allStrokesOver')],
  ['plots', 'plots', scoreWords('curvesHeightsAngles')],
] as const;

const whichWords = [
  ['all', scoreWords('allStrokes')],
  ['breathing', 'breathing'],
  ['not-breathing', scoreWords('notBreathing')],
] as const;

/** What is shown under the stage; for strokes over one another, which of them. */
export function LowerSwitch() {
  const tip = useTip();
  const { view, readings } = useOpenSwim();
  const lower = useView((state) => state.lower);
  const which = useView((state) => state.overlaidOf);
  const mixed = useStore(readings.store, ({ rhythm: { strokes } }) => {
    const breathing = strokes.filter((stroke) => stroke.breathing).length;
    return breathing > 0 && breathing < strokes.length;
  });
  return (
    <>
      <fieldset className="switch" aria-label={scoreWords('underStage')}>
        {parts.map(([part, words, title]) => (
          <button
            key={part}
            type="button"
            aria-pressed={lower === part}
            title={tip('lower', title)}
            onClick={() => view.setState({ lower: part })}
          >
            {words}
          </button>
        ))}
      </fieldset>
      {lower === 'overlaid' && mixed && (
        <select
          aria-label={scoreWords('whichStrokes')}
          value={which}
          onChange={(event) => {
            const chosen = whichWords.find(([each]) => each === event.target.value);
            if (chosen) view.setState({ overlaidOf: chosen[0] });
          }}
        >
          {whichWords.map(([each, words]) => (
            <option key={each} value={each}>
              {words}
            </option>
          ))}
        </select>
      )}
    </>
  );
}
