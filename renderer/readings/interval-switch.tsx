import { useOpenSwim, useView } from '../open-swim/open-swim';

const questions = [
  ['this-swim', 'this swim', 'How exactly the marks tell of this swim: frames, marking, scale'],
  [
    'this-swimmer',
    'this swimmer',
    'How well these cycles tell of the swimmer, who varies from one to the next',
  ],
] as const;

/** What the ± behind every value answers. */
export function IntervalSwitch() {
  const { view } = useOpenSwim();
  const chosen = useView((state) => state.intervals);
  return (
    <div className="interval-switch">
      <fieldset className="switch" aria-label="What the plus or minus answers">
        <span aria-hidden="true">± of</span>
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
        {chosen === 'this-swim'
          ? 'How exactly the marks tell of this swim.'
          : 'How well these cycles tell of the swimmer; from two cycles on.'}
      </p>
    </div>
  );
}
