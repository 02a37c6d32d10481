import { keepInViewWords } from '#core/words/keep-in-view';

interface Props {
  readonly keep: boolean;
  readonly disabled?: boolean;
  readonly onKeep: (keep: boolean) => void;
}

/** Whether what is saved is close to the swimmer; begins as the stage is. */
export function KeepInViewTick({ keep, disabled = false, onKeep }: Props) {
  return (
    <label className="keep-in-view-tick">
      <input
        type="checkbox"
        checked={keep}
        disabled={disabled}
        onChange={(event) => onKeep(event.target.checked)}
      />
      {keepInViewWords('choice')}
    </label>
  );
}
