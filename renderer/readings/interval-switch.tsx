import { useOpenSwim, useView } from '../open-swim/open-swim';
import { readingsWords } from '#core/words/readings';

const questions = [
  ['this-swim', readingsWords('swim'), readingsWords('howExactlyMarks')],
  ['this-swimmer', readingsWords('swimmer'), readingsWords('howWellThese')],
] as const;

/** What the ± behind every value answers. */
export function IntervalSwitch() {
  const { view } = useOpenSwim();
  const chosen = useView((state) => state.intervals);
  return (
    <div className="interval-switch">
      <fieldset className="switch" aria-label={readingsWords('whatPlusOrMinus')}>
        <span aria-hidden="true">{readingsWords('of')}</span>
        {questions.map(([question, words, title]) => (
          <button
            key={question}
            type="button"
            aria-pressed={chosen === question}
            title={title}
            onClick={() => view.setState({ intervals: question })}
          >
            {words}
          </button>
        ))}
      </fieldset>
      <p>
        {chosen === 'this-swim' ? readingsWords('howExactlyMarksTell') : readingsWords('howWellTheseCycles')}
      </p>
    </div>
  );
}
