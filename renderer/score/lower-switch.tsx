import { useStore } from 'zustand';
import { useTip } from '../ui/use-tip';
import { useOpenSwim, useView } from '../open-swim/open-swim';

const parts = [
  ['score', 'score', 'The rhythm along the clip'],
  ['overlaid', 'overlaid', 'All strokes over one another, with mean and SD'],
  ['plots', 'plots', 'Curves of heights, angles and speed'],
] as const;

const whichWords = [
  ['all', 'all strokes'],
  ['breathing', 'breathing'],
  ['not-breathing', 'not breathing'],
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
      <fieldset className="switch" aria-label="Under the stage">
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
          aria-label="Which strokes"
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
