import { type SpeedCurve, usualCutoffHz } from '#core/measures/plots/speed-curve';
import { plotsWords } from '#core/words/plots';

interface Props {
  readonly curve: SpeedCurve;
  readonly chosen: 'usual' | 'suggested';
  readonly onChoose: (cutoff: 'usual' | 'suggested') => void;
}

/** Which low-pass the speed curve is drawn with: the usual one, or the one the trace itself suggests. */
export function CutoffSwitch({ curve, chosen, onChoose }: Props) {
  const { suggestedHz } = curve;
  return (
    <fieldset className="switch" aria-label={plotsWords('lowPassSpeed')}>
      <button type="button" aria-pressed={chosen === 'usual'} onClick={() => onChoose('usual')}>
        {plotsWords('hzUsual', { usualCutoffHz })}
      </button>
      <button
        type="button"
        aria-pressed={chosen === 'suggested'}
        disabled={suggestedHz === null}
        onClick={() => onChoose('suggested')}
        title={suggestedHz === null ? plotsWords('traceTooShort') : plotsWords('residualAnalysisWinter')}
      >
        {suggestedHz === null
          ? plotsWords('noneSuggested')
          : plotsWords('hzTrace', { suggestedHz: suggestedHz.toFixed(1) })}
      </button>
      {curve.rawNoise !== null && (
        <small>
          {plotsWords('unfilteredMarkingAlone', { rawNoise: curve.rawNoise.toFixed(2), unit: curve.unit })}
        </small>
      )}
    </fieldset>
  );
}
