import { useEffect, useRef, useState } from 'react';
import { eventWords } from '#core/marks/mark-words';
import { useOpenSwim, useView } from '../open-swim/open-swim';
import { answerQuestion, type Said } from '../open-swim/marking';

const nothing = { hand: null, breathTo: null, metres: null } as const;

const choices = {
  hand: {
    asks: 'Which hand?',
    answers: [
      { words: 'Left', said: { ...nothing, hand: 'left' } },
      { words: 'Right', said: { ...nothing, hand: 'right' } },
      { words: 'Both', said: { ...nothing } },
    ],
  },
  breath: {
    asks: 'Which way does the mouth turn?',
    answers: [
      { words: 'Front', said: { ...nothing, breathTo: 'front' } },
      { words: 'Left', said: { ...nothing, breathTo: 'left' } },
      { words: 'Right', said: { ...nothing, breathTo: 'right' } },
    ],
  },
} as const satisfies Record<
  string,
  {
    asks: string;
    answers: readonly { words: string; said: Said }[];
  }
>;

/** Common distances of pool marks, metres (World Aquatics facilities rules: 5 and 15 m; halves and ends). */
const distances = [5, 10, 15, 20, 25, 35, 45, 50];

/** Asks the one thing more a mark needs; Escape marks nothing. */
export function MarkQuestion() {
  const session = useOpenSwim();
  const question = useView((state) => state.question);
  const first = useRef<HTMLElement>(null);
  const [metres, setMetres] = useState('');
  useEffect(() => {
    if (question) first.current?.focus();
  }, [question]);
  if (!question) return null;
  const drop = (): void => session.view.setState({ question: null });
  const answer = (said: Said): void => answerQuestion(session, said);
  const again = question.markId !== null;
  const typed = Number(metres.replace(',', '.'));
  const usable = metres.trim() !== '' && Number.isFinite(typed) && typed >= 0 && typed <= 10_000;
  return (
    <div
      className="question"
      role="dialog"
      aria-label={`${eventWords[question.kind]}: one thing more`}
      onKeyDown={(event) => {
        event.stopPropagation();
        if (event.key === 'Escape') drop();
        const choice =
          question.asks === 'metres' ? undefined : choices[question.asks].answers[Number(event.key) - 1];
        if (choice) answer(choice.said);
      }}
    >
      <strong>
        {question.asks === 'metres' ? 'How many metres from the wall?' : choices[question.asks].asks}
      </strong>
      {question.asks === 'metres' ? (
        <form
          onSubmit={(event) => {
            event.preventDefault();
            if (usable) answer({ ...nothing, metres: typed });
          }}
        >
          <input
            ref={first as React.RefObject<HTMLInputElement>}
            inputMode="decimal"
            value={metres}
            onChange={(event) => setMetres(event.target.value)}
            aria-label="Metres from the wall"
          />
          <button type="submit" disabled={!usable}>
            {again ? 'Keep' : 'Mark'}
          </button>
          <div className="question-answers">
            {distances.map((each) => (
              <button key={each} type="button" onClick={() => answer({ ...nothing, metres: each })}>
                {each} m
              </button>
            ))}
          </div>
        </form>
      ) : (
        <div className="question-answers">
          {choices[question.asks].answers.map(({ words, said }, index) => (
            <button
              key={words}
              type="button"
              ref={index === 0 ? (first as React.RefObject<HTMLButtonElement>) : undefined}
              onClick={() => answer(said)}
            >
              {words} <kbd>{index + 1}</kbd>
            </button>
          ))}
        </div>
      )}
      <button type="button" className="quiet" onClick={drop}>
        {again ? 'Leave as it was' : 'Don’t mark'} <kbd>Esc</kbd>
      </button>
    </div>
  );
}
