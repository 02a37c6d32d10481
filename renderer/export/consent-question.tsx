import './consent-question.css';
import { type LeaveToShow, namesInWords } from '#core/consent/leave-to-show';

interface Props {
  readonly leave: LeaveToShow;
  readonly agreed: boolean;
  readonly onAgree: (agreed: boolean) => void;
}

/** Asked before pictures of a swimmer without recorded consent are saved; shows nothing where nothing need be asked. */
export function ConsentQuestion({ leave, agreed, onAgree }: Props) {
  if (leave.kind === 'recorded') return null;
  return (
    <label className="consent-question">
      <input type="checkbox" checked={agreed} onChange={(event) => onAgree(event.target.checked)} />
      <span>
        No written consent to show {namesInWords(leave.names)} is recorded. For a minor a guardian must have
        given it. I have it, and take care where these pictures go.
      </span>
    </label>
  );
}
