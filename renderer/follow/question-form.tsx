import { useStore } from 'zustand';
import { landmarkWords } from '#core/marks/mark-words';
import { useKeyOf, useTip } from '../ui/use-tip';
import { useOpenSwim, useSwim, useView } from '../open-swim/open-swim';
import { leaveOutNext } from '../stage/tools/body-line-tool';
import { askedPoint, askNext, keepAsked, stopAsking } from './follow-actions';
import { questionsOf } from '../open-swim/follow-selectors';
import { followWords } from '#core/words/follow';

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
    <section className="scale-form follow-question" aria-label={followWords('unsurePoint')}>
      <strong role="status">
        {at >= 0 &&
          questions.length > 1 &&
          `${followWords('of', { at: at + 1, questions: questions.length })} `}
        {followWords('frameWhat', { what, frame: asked.frame + 1 })}
      </strong>
      <p>{followWords('ringedPointRight')}</p>
      <div className="question-answers">
        {askedPoint(session) &&
          button('follow-right', followWords('right'), followWords('ringedPointWhere'), () =>
            keepAsked(session),
          )}
        {button('leave-out', followWords('hidden'), followWords('cantSeenYouArent'), () =>
          leaveOutNext(session),
        )}
        {questions.length > 1 &&
          button('follow-ask', followWords('later'), followWords('leaveOneLater'), () => askNext(session))}
        {button('put-away', followWords('done'), followWords('stopAnswering'), () => stopAsking(session))}
      </div>
    </section>
  );
}
