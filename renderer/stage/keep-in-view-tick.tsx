import { keepInViewWords } from '#core/words/keep-in-view';

interface Props {
  readonly keep: boolean;
  readonly disabled?: boolean;
  /** How the form it stands in looks. */
  readonly className: string;
  readonly onKeep: (keep: boolean) => void;
}

/** Whether what is saved is close to the swimmer; begins as the stage is. */
export function KeepInViewTick({ keep, disabled = false, className, onKeep }: Props) {
  return (
    <label className={className}>
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
