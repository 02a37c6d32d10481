import { useStore } from 'zustand';
import { basisWords, markingBasis } from '#core/measures/marking-basis';
import { doubtsInWords, isDoubtful, undoubted } from '#core/measures/doubtful';
import { noteWords } from '#core/measures/reason-words';
import type { ComputedReading, Interval, ReadingDefinition, Singles } from '#core/measures/reading';
import { useOpenSwim, useSwim } from '../open-swim/open-swim';
import { ReadingTarget } from '../targets/reading-target';
import { DefinitionDrawing } from './definition-drawing';
import { formatReading } from '#core/measures/format-reading';
import { readingsWords } from '#core/words/readings';
import { rich } from '../ui/rich';

const questions: Readonly<Record<Interval['question'], string>> = {
  'this-swim': readingsWords('swimFramesMarking'),
  'this-swimmer': readingsWords('swimmerFromCycle'),
};

/** Everything behind one number: what it is, drawn and in words, where it is from, and what to make of it. */
export function ReadingDetails(props: {
  readonly definition: ReadingDefinition;
  readonly reading: ComputedReading | null;
  /** As printed beside the value; empty when there is none yet. */
  readonly unit: string;
}) {
  const { definition, reading, unit } = props;
  return (
    <dl className="reading-details">
      <dt>{readingsWords('what')}</dt>
      <dd>
        <DefinitionDrawing definition={definition} />
        {definition.definition}
      </dd>
      <dt>{readingsWords('coach')}</dt>
      <dd>{definition.forCoach}</dd>
      <dt>{readingsWords('swimmer2')}</dt>
      <dd>{definition.forSwimmer}</dd>
      {reading && <Behind reading={reading} digits={definition.digits} />}
      <dt>{readingsWords('target')}</dt>
      <dd>
        <ReadingTarget reading={definition.id} unit={unit} />
      </dd>
      <dt>{readingsWords('source')}</dt>
      <dd>{definition.source}</dd>
    </dl>
  );
}

/** "Mean ± SD": how much single cycles or body lines differ, and from where to where they go. */
function SinglesLine(props: {
  readonly reading: ComputedReading;
  readonly singles: Singles;
  readonly digits: number;
}) {
  const { reading, singles, digits } = props;
  const { value, unit, spread } = formatReading(
    {
      ...reading,
      ...undoubted,
      interval: { low: reading.value - singles.sd, high: reading.value + singles.sd },
    },
    digits,
  );
  const isKicksOrStrokes = singles.of === 'cycles';
  return (
    <>
      <dt>{isKicksOrStrokes ? readingsWords('fromCycleCycle') : readingsWords('fromBodyLine')}</dt>
      <dd>
        {rich(
          readingsWords.parts('meanSd', {
            value,
            spread,
            unit,
            count: singles.count,
            value2: isKicksOrStrokes ? readingsWords('cycles') : readingsWords('bodyLines'),
            span: (inside) => <span className="unbroken">{inside}</span>,
          }),
        )}
      </dd>
    </>
  );
}

function Behind({ reading, digits }: { readonly reading: ComputedReading; readonly digits: number }) {
  const session = useOpenSwim();
  const coach = useStore(session.known, (state) => state.coach);
  const error = useStore(session.known, (state) => state.markingError);
  const basis = useSwim((swim) => basisWords(markingBasis(reading, swim, coach, error)));
  const both = [reading.interval, reading.otherInterval].flatMap((interval) =>
    interval ? [{ question: interval.question, text: formatReading({ ...reading, interval }, digits) }] : [],
  );
  const notes = reading.notes.filter(
    (note) => !note.startsWith('marking-error') && note !== 'implausible-for-a-human',
  );
  return (
    <>
      {isDoubtful(reading) && (
        <>
          <dt>{readingsWords('doubtful')}</dt>
          <dd>{doubtsInWords(reading).join('; ')}</dd>
        </>
      )}
      {notes.length > 0 && (
        <>
          <dt>{readingsWords('mind')}</dt>
          <dd>{notes.map(noteWords).join('; ')}</dd>
        </>
      )}
      <dt>{readingsWords('n95Interval')}</dt>
      {both.map(({ question, text }) => (
        <dd key={question}>
          {questions[question]}:{' '}
          <span className="unbroken">
            {text.spread} {text.unit}
          </span>
        </dd>
      ))}
      {both.length < 2 && (
        <dd>
          {reading.perCycle.length < 2
            ? readingsWords('swimmerCantTold')
            : readingsWords('swimmerCantToldNeighbouring')}
        </dd>
      )}
      {reading.singles && <SinglesLine reading={reading} singles={reading.singles} digits={digits} />}
      <dt>{readingsWords('markingError')}</dt>
      <dd>{basis}</dd>
    </>
  );
}
