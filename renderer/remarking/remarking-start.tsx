import { useState } from 'react';
import { useStore } from 'zustand';
import { errorWords } from '#core/host-contract/error-words';
import { remarkable } from '#core/uncertainty/remarking-plan';
import { clockOf, useOpenSwim, useSwim } from '../open-swim/open-swim';
import type { Remarking } from './use-remarking';
import { remarkingWords } from '#core/words/remarking';

/** How many of each can be asked for; all that there are is always one of the choices. Our default steps. */
const steps = [0, 5, 10, 20, 40] as const;

const things = [
  ['moments', remarkingWords('moments'), remarkingWords('handEntriesKick')],
  ['bodyLines', remarkingWords('bodyLines'), remarkingWords('pointsBodyLine')],
  ['followed', remarkingWords('followedPoints'), remarkingWords('pointsMachineFollowed')],
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
      <h1>{remarkingWords('markAgainWithout')}</h1>
      {trouble && (
        <p className="message message-trouble" role="alert">
          {remarkingWords('yourAnswersKept', {
            what: errorWords(trouble).what,
            todo: errorWords(trouble).todo,
          })}
        </p>
      )}
      <p>{remarkingWords('howFarApartTwo')}</p>
      {left && (
        <section className="remark-left" aria-label={remarkingWords('passLeftUnfinished')}>
          <p>
            {remarkingWords('passLeftStill', { items: left.items.length - left.answers.length })}
            {left.answers.length > 0 && remarkingWords('done', { answers: left.answers.length })}.
          </p>
          <button type="button" className="primary" onClick={pass.goOn} disabled={!hasFilm}>
            {remarkingWords('go')}
          </button>
          <button type="button" onClick={pass.throwAway}>
            {remarkingWords('throwAway')}
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
              <small>{remarkingWords('chooseFrom', { words, counts: counts[what] })}</small>
              <div>
                {[...new Set([...steps.filter((step) => step < counts[what]), counts[what]])].map((step) => (
                  <label key={step}>
                    <input
                      type="radio"
                      name={what}
                      checked={choice[what] === step}
                      onChange={() => setChoice({ ...choice, [what]: step })}
                    />
                    {step === 0
                      ? remarkingWords('none')
                      : step === counts[what]
                        ? remarkingWords('all', { step })
                        : step}
                  </label>
                ))}
              </div>
            </fieldset>
          ))}
          {!hasFilm && <p className="caution">{remarkingWords('filmNeededMark')}</p>}
          <footer className="dialog-foot">
            <button type="submit" className="primary" disabled={!some || !hasFilm}>
              {remarkingWords('start')}
            </button>
            <button type="button" onClick={pass.showResults}>
              {remarkingWords('whatMeasuredSo')}
            </button>
            <button type="button" onClick={onLeave}>
              {remarkingWords('backBench')}
            </button>
          </footer>
        </form>
      )}
      {left && (
        <footer className="dialog-foot">
          <button type="button" onClick={onLeave}>
            {remarkingWords('backBench')}
          </button>
        </footer>
      )}
    </main>
  );
}
