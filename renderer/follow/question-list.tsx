import { useKeyOf } from '../ui/use-tip';
import { keyCap } from '../ui/key-cap';
import { useStore } from 'zustand';
import { landmarkWords } from '#core/marks/mark-words';
import { useOpenSwim, useSwim } from '../open-swim/open-swim';
import { ask, askNext } from './follow-actions';
import { questionsOf, sharpeningOf, unsureOf } from '../open-swim/follow-selectors';
import { followWords } from '#core/words/follow';
import { rich } from '../ui/rich';

/** As many as a coach takes in at a glance; the next ones move up. */
const shown = 6;

/** The points that are not sure, in the order in which marking them helps most. */
export function QuestionList() {
  const session = useOpenSwim();
  const keyOf = useKeyOf();
  const questions = useSwim(questionsOf);
  const asked = useStore(session.follow, (state) => state.asked);
  const unsure = useSwim(unsureOf);
  const sharpening = useSwim(sharpeningOf);
  if (questions.length === 0) {
    if (!sharpening) return null;
    const { landmark, frame } = sharpening;
    return (
      <section aria-label={followWords('unsurePoints')}>
        <p className="follow-state">{followWords('noPointUnsureFull')}</p>
        <button
          type="button"
          className="quiet"
          onClick={() => ask(session, sharpening)}
          title={followWords('nothingNeedsAll')}
        >
          {followWords('oneMoreMarkIf', {
            landmark: landmarkWords[landmark].toLowerCase(),
            frame: frame + 1,
          })}
        </button>
      </section>
    );
  }
  return (
    <section aria-label={followWords('unsurePoints')}>
      <h3>{followWords('pointsUnsure', { unsure })}</h3>
      <p className="follow-state">
        {rich(
          followWords.parts('questionsLeftEach', {
            right: keyOf('follow-right'),
            hidden: keyOf('leave-out'),
            questions: questions.length,
            kbd: keyCap,
          }),
        )}
      </p>
      <button type="button" className="primary" onClick={() => askNext(session)}>
        {rich(
          followWords.parts('u', {
            key: keyOf('follow-ask'),
            value: asked ? followWords('nextQuestion') : followWords('answerQuestions'),
            kbd: keyCap,
          }),
        )}
      </button>
      <ol className="follow-list">
        {questions.slice(0, shown).map((question) => (
          <li key={`${question.landmark}-${question.frame}`}>
            <button
              type="button"
              aria-pressed={asked?.landmark === question.landmark && asked.frame === question.frame}
              onClick={() => ask(session, question)}
            >
              {followWords('markFrame', {
                landmark: landmarkWords[question.landmark].toLowerCase(),
                frame: question.frame + 1,
              })}
              <small>{followWords('frames', { frames: question.frames })}</small>
            </button>
          </li>
        ))}
      </ol>
      {questions.length > shown && (
        <p className="follow-state">{followWords('more', { questions: questions.length - shown })}</p>
      )}
    </section>
  );
}
