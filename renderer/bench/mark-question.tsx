import { useKeyOf } from '../ui/use-tip';
import { keyCap } from '../ui/key-cap';
import { useEffect, useRef, useState } from 'react';
import { eventWords } from '#core/marks/mark-words';
import { useOpenSwim, useView } from '../open-swim/open-swim';
import { answerQuestion, type Said } from '../open-swim/marking';
import { benchWords } from '#core/words/bench';
import { rich } from '../ui/rich';

const nothing = { hand: null, breathTo: null, metres: null } as const;

const choices = {
  hand: {
    asks: benchWords('whichHand'),
    answers: [
      { words: benchWords('left'), said: { ...nothing, hand: 'left' } },
      { words: benchWords('right'), said: { ...nothing, hand: 'right' } },
      { words: benchWords('both'), said: { ...nothing } },
    ],
  },
  breath: {
    asks: benchWords('whichWayDoes'),
    answers: [
      { words: benchWords('front'), said: { ...nothing, breathTo: 'front' } },
      { words: benchWords('left'), said: { ...nothing, breathTo: 'left' } },
      { words: benchWords('right'), said: { ...nothing, breathTo: 'right' } },
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
  const keyOf = useKeyOf();
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
      aria-label={benchWords('oneThingMore', { event: eventWords[question.kind] })}
      onKeyDown={(event) => {
        event.stopPropagation();
        if (event.key === 'Escape') drop();
        const choice =
          question.asks === 'metres' ? undefined : choices[question.asks].answers[Number(event.key) - 1];
        if (choice) answer(choice.said);
      }}
    >
      <strong>
        {question.asks === 'metres' ? benchWords('howManyMetres') : choices[question.asks].asks}
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
            aria-label={benchWords('metresFromWall')}
          />
          <button type="submit" disabled={!usable}>
            {again ? benchWords('keep') : benchWords('mark2')}
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
        {rich(
          benchWords.parts('esc', {
            key: keyOf('put-away'),
            value: again ? benchWords('leave') : benchWords('dontMark'),
            kbd: keyCap,
          }),
        )}
      </button>
    </div>
  );
}
