import { useStore } from 'zustand';
import { landmarkWords } from '#core/marks/mark-words';
import { useOpenSwim, useSwim } from '../open-swim/open-swim';
import { ask, askNext } from './follow-actions';
import { questionsOf, sharpeningOf, unsureOf } from '../open-swim/follow-selectors';

/** As many as a coach takes in at a glance; the next ones move up. */
const shown = 6;

/** The points that are not sure, in the order in which marking them helps most. */
export function QuestionList() {
  const session = useOpenSwim();
  const questions = useSwim(questionsOf);
  const asked = useStore(session.follow, (state) => state.asked);
  const unsure = useSwim(unsureOf);
  const sharpening = useSwim(sharpeningOf);
  if (questions.length === 0) {
    if (!sharpening) return null;
    const { landmark, frame } = sharpening;
    return (
      <section aria-label="Unsure points">
        <p className="follow-state">No point is unsure.</p>
        <button
          type="button"
          className="quiet"
          onClick={() => ask(session, sharpening)}
          title="Nothing needs it. Of all marks this one would make the points most exact."
        >
          One more mark if you like: {landmarkWords[landmark].toLowerCase()}, frame {frame + 1}
        </button>
      </section>
    );
  }
  return (
    <section aria-label="Unsure points">
      <h3>{unsure === 1 ? '1 point unsure' : `${unsure} points unsure`}</h3>
      <p className="follow-state">
        {questions.length === 1 ? 'One question is' : `${questions.length} questions are`} left. Each answer
        goes on to the next: <kbd>K</kbd> right as it is, a click where it belongs, <kbd>H</kbd> hidden.
      </p>
      <button type="button" className="primary" onClick={() => askNext(session)}>
        {asked ? 'Next question' : 'Answer the questions'} <kbd>U</kbd>
      </button>
      <ol className="follow-list">
        {questions.slice(0, shown).map((question) => (
          <li key={`${question.landmark}-${question.frame}`}>
            <button
              type="button"
              aria-pressed={asked?.landmark === question.landmark && asked.frame === question.frame}
              onClick={() => ask(session, question)}
            >
              Mark the {landmarkWords[question.landmark].toLowerCase()} on frame {question.frame + 1}
              <small>
                {question.frames} {question.frames === 1 ? 'frame' : 'frames'}
              </small>
            </button>
          </li>
        ))}
      </ol>
      {questions.length > shown && <p className="follow-state">and {questions.length - shown} more</p>}
    </section>
  );
}
