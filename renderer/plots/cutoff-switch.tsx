import { type SpeedCurve, usualCutoffHz } from '#core/measures/plots/speed-curve';

interface Props {
  readonly curve: SpeedCurve;
  readonly chosen: 'usual' | 'suggested';
  readonly onChoose: (cutoff: 'usual' | 'suggested') => void;
}

/** Which low-pass the speed curve is drawn with: the usual one, or the one the trace itself suggests. */
export function CutoffSwitch({ curve, chosen, onChoose }: Props) {
  const { suggestedHz } = curve;
  return (
    <fieldset className="switch" aria-label="Low-pass of the speed">
      <button type="button" aria-pressed={chosen === 'usual'} onClick={() => onChoose('usual')}>
        {usualCutoffHz} Hz, usual
      </button>
      <button
        type="button"
        aria-pressed={chosen === 'suggested'}
        disabled={suggestedHz === null}
        onClick={() => onChoose('suggested')}
        title={
          suggestedHz === null
            ? 'The trace is too short or too sparse to suggest one'
            : 'By residual analysis (Winter): lets through as much noise as it takes away movement. The readings do not change: they come from fitted waves'
        }
      >
        {suggestedHz === null ? 'none suggested' : `${suggestedHz.toFixed(1)} Hz, by this trace`}
      </button>
      {curve.rawNoise !== null && (
        <small>
          unfiltered, marking alone would make it waver by {curve.rawNoise.toFixed(2)} {curve.unit} (SD)
        </small>
      )}
    </fieldset>
  );
}
