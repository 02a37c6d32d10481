import { useStore } from 'zustand';
import { landmarkWords } from '#core/marks/mark-words';
import { useBench, useSwim } from '../bench/bench-session';
import { askedPoint, askNext, keepAsked, stopAsking } from '../follow/follow-actions';
import { questionsOf } from '../follow/follow-selectors';
import { leaveOutNext } from './tools/body-line-tool';

/** One unsure point: is it right, where is it, or can't it be seen? Each answer goes on to the next question. */
export function QuestionPrompt() {
  const session = useBench();
  const asked = useStore(session.follow, (state) => state.asked);
  const questions = useSwim(questionsOf);
  if (!asked) return null;
  const at = questions.findIndex(
    ({ landmark, frame }) => landmark === asked.landmark && frame === asked.frame,
  );
  const what = landmarkWords[asked.landmark].toLowerCase();
  return (
    <output className="stage-prompt">
      <strong>
        {at >= 0 && questions.length > 1 ? `${at + 1} of ${questions.length}: ` : ''}
        {at >= 0 && questions.length > 1 ? what : landmarkWords[asked.landmark]}
      </strong>
      <span>Click where it is.</span>
      {askedPoint(session) && (
        <button
          type="button"
          onClick={() => keepAsked(session)}
          title="The ringed point is where it belongs (K)"
        >
          Right as it is <kbd>K</kbd>
        </button>
      )}
      <button
        type="button"
        onClick={() => leaveOutNext(session)}
        title="It can’t be seen: it isn’t asked for until it is seen again (H)"
      >
        Hidden <kbd>H</kbd>
      </button>
      {questions.length > 1 && (
        <button type="button" onClick={() => askNext(session)} title="Leave this one for later (U)">
          Later <kbd>U</kbd>
        </button>
      )}
      <button type="button" onClick={() => stopAsking(session)} title="Stop answering (Esc)">
        Done <kbd>Esc</kbd>
      </button>
    </output>
  );
}
