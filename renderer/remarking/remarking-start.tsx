import { useState } from 'react';
import { useStore } from 'zustand';
import { errorWords } from '#core/host-contract/error-words';
import { remarkable } from '#core/uncertainty/remarking-plan';
import { clockOf, useOpenSwim, useSwim } from '../open-swim/open-swim';
import type { Remarking } from './use-remarking';

/** How many of each can be asked for; all that there are is always one of the choices. Our default steps. */
const steps = [0, 5, 10, 20, 40] as const;

const things = [
  ['moments', 'Moments', 'hand entries, kick tops and so on, each in a short loop'],
  ['bodyLines', 'Body lines', 'the points of a body line, on a bare picture'],
  ['followed', 'Followed points', 'points the machine followed, marked by hand to see how far off they are'],
] as const;

/** Ten body lines give every landmark the ten pairs it needs; moments of a kind add up over passes and swims. */
const usual = { moments: 20, bodyLines: 10, followed: 10 } as const;

/** What to mark again, and how much of it; or to go on with what was left. */
export function RemarkingStart({
  pass,
  onLeave,
}: {
  readonly pass: Remarking;
  readonly onLeave: () => void;
}) {
  const session = useOpenSwim();
  const there = useSwim((swim) => swim);
  const counts = remarkable(there, clockOf(there));
  const [choice, setChoice] = useState(() => ({
    moments: Math.min(usual.moments, counts.moments),
    bodyLines: Math.min(usual.bodyLines, counts.bodyLines),
    followed: Math.min(usual.followed, counts.followed),
  }));
  const { left, trouble } = pass;
  const hasFilm = useStore(session.film, (state) => state.source !== null);
  const some = choice.moments + choice.bodyLines + choice.followed > 0;
  return (
    <main className="remark-page">
      <h1>Mark again, without seeing your first marks</h1>
      {trouble && (
        <p className="message message-trouble" role="alert">
          {errorWords(trouble).what} {errorWords(trouble).todo} Your answers are kept in this window.
        </p>
      )}
      <p>
        How far apart two marks of the same moment fall is your own marking error. Once there are ten pairs of
        a kind, from this pass or others, every interval on every swim uses it instead of an assumed one. The
        pass shows a random choice in random order; the first marks stay hidden and are not changed.
      </p>
      {left && (
        <section className="remark-left" aria-label="A pass left unfinished">
          <p>
            A pass was left: {left.items.length - left.answers.length} still to mark
            {left.answers.length > 0 && `, ${left.answers.length} done`}.
          </p>
          <button type="button" className="primary" onClick={pass.goOn} disabled={!hasFilm}>
            Go on with it
          </button>
          <button type="button" onClick={pass.throwAway}>
            Throw it away
          </button>
        </section>
      )}
      {!left && (
        <form
          onSubmit={(event) => {
            event.preventDefault();
            pass.begin(choice);
          }}
        >
          {things.map(([what, label, words]) => (
            <fieldset key={what} className="remark-choice" disabled={counts[what] === 0}>
              <legend>{label}</legend>
              <small>
                {words}; {counts[what]} to choose from
              </small>
              <div>
                {[...new Set([...steps.filter((step) => step < counts[what]), counts[what]])].map((step) => (
                  <label key={step}>
                    <input
                      type="radio"
                      name={what}
                      checked={choice[what] === step}
                      onChange={() => setChoice({ ...choice, [what]: step })}
                    />
                    {step === 0 ? 'none' : step === counts[what] ? `all ${step}` : step}
                  </label>
                ))}
              </div>
            </fieldset>
          ))}
          {!hasFilm && (
            <p className="caution">The film is needed to mark again, and it can’t be shown now.</p>
          )}
          <footer className="dialog-foot">
            <button type="submit" className="primary" disabled={!some || !hasFilm}>
              Start
            </button>
            <button type="button" onClick={pass.showResults}>
              What was measured so far
            </button>
            <button type="button" onClick={onLeave}>
              Back to the bench
            </button>
          </footer>
        </form>
      )}
      {left && (
        <footer className="dialog-foot">
          <button type="button" onClick={onLeave}>
            Back to the bench
          </button>
        </footer>
      )}
    </main>
  );
}
