import { noteWords } from '#core/measures/reason-words';
import type { ComputedReading, ReadingDefinition } from '#core/measures/reading';
import { formatReading } from './format-reading';

const questions = {
  'this-swim': 'how exactly these marks tell of this swim (frames, marking, scale)',
  'this-swimmer': 'how much the swimmer varies from cycle to cycle',
} as const;

/** Everything behind one number: what it is, where it is from, and what to make of it. */
export function ReadingDetails(props: {
  readonly definition: ReadingDefinition;
  readonly reading: ComputedReading | null;
}) {
  const { definition, reading } = props;
  const other =
    reading?.otherInterval &&
    formatReading({ ...reading, interval: reading.otherInterval }, definition.digits);
  return (
    <dl className="reading-details">
      <dt>What it is</dt>
      <dd>{definition.definition}</dd>
      <dt>For the coach</dt>
      <dd>{definition.forCoach}</dd>
      <dt>For the swimmer</dt>
      <dd>{definition.forSwimmer}</dd>
      {reading && (
        <>
          {reading.notes.length > 0 && (
            <>
              <dt>Mind</dt>
              <dd>{reading.notes.map(noteWords).join('; ')}</dd>
            </>
          )}
          <dt>± 95 % says</dt>
          <dd>
            {questions[reading.interval.question]}
            {reading.otherInterval && other && (
              <>
                ; {questions[reading.otherInterval.question]}: {other.spread} {other.unit}
              </>
            )}
            .
          </dd>
        </>
      )}
      <dt>Source</dt>
      <dd>{definition.source}</dd>
    </dl>
  );
}
