import { useStore } from 'zustand';
import { landmarkWords } from '#core/marks/mark-words';
import { useKeyOf, useTip } from '../ui/use-tip';
import { useOpenSwim, useSwim, useView } from '../open-swim/open-swim';
import { leaveOutNext } from '../stage/tools/body-line-tool';
import { askedPoint, askNext, keepAsked, stopAsking } from './follow-actions';
import { questionsOf } from '../open-swim/follow-selectors';

/**
 * One unsure point, beside the picture: is it right, where is it, or can't it be seen? Each answer goes on to the next
 * question.
 */
export function QuestionForm() {
  const tip = useTip();
  const keyOf = useKeyOf();
  const session = useOpenSwim();
  const asked = useStore(session.follow, (state) => state.asked);
  const laying = useView((state) => state.tool === 'body-line' && state.nextLandmark === asked?.landmark);
  const here = useView((state) => state.frame === asked?.frame);
  const questions = useSwim(questionsOf);
  if (!asked || !laying || !here) return null;
  const at = questions.findIndex(
    ({ landmark, frame }) => landmark === asked.landmark && frame === asked.frame,
  );
  const what = landmarkWords[asked.landmark].toLowerCase();
  const button = (id: string, words: string, about: string, run: () => void) => (
    <button type="button" onClick={run} title={tip(id, about)}>
      {words} <kbd>{keyOf(id)}</kbd>
    </button>
  );
  return (
    <section className="scale-form follow-question" aria-label="Unsure point">
      <strong role="status">
        {at >= 0 && questions.length > 1 && `${at + 1} of ${questions.length}: `}
        {what} on frame {asked.frame + 1}
      </strong>
      <p>Is the ringed point right? If not, click where it is.</p>
      <div className="question-answers">
        {askedPoint(session) &&
          button('follow-right', 'Right as it is', 'The ringed point is where it belongs', () =>
            keepAsked(session),
          )}
        {button(
          'leave-out',
          'Hidden',
          'It can’t be seen. You aren’t asked for it until it is seen again',
          () => leaveOutNext(session),
        )}
        {questions.length > 1 &&
          button('follow-ask', 'Later', 'Leave this one for later', () => askNext(session))}
        {button('put-away', 'Done', 'Stop answering', () => stopAsking(session))}
      </div>
    </section>
  );
}
