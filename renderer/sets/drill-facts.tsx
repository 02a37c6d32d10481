import { catalogue } from '#core/measures/families';
import type { Drill } from '#core/practice/drill-schema';
import { patternPhrase } from '#core/practice/stroke-pattern';
import { aidsWords, armWords, sideWords } from '#core/swim-file/card-words';
import { CautionsList } from './cautions-list';
import { practiceStrokeWords } from './sets-words';
import { setsWords } from '#core/words/sets';

const labels = new Map(catalogue.map(({ id, label }) => [id, label]));

/** The reading's name in the catalogue; the id where this build knows no such reading. */
export function readingLabel(id: string): string {
  return labels.get(id) ?? id;
}

/** Everything a drill says: what for, how, what to watch, which readings apply, cautions, and where it is from. */
export function DrillFacts({ drill }: { readonly drill: Drill }) {
  const how = [
    practiceStrokeWords[drill.stroke],
    sideWords[drill.sideUp],
    drill.arms === 'stroking' ? '' : armWords[drill.arms],
    drill.aids.length > 0 ? setsWords('with', { aids: aidsWords(drill.aids) }) : '',
    drill.pattern ? patternPhrase(drill.pattern.runs) : '',
  ];
  return (
    <div className="drill-facts">
      <p className="drill-how">{how.filter(Boolean).join(' · ')}</p>
      <p>
        <b>{setsWords('whatFull')}</b> {drill.purpose}
      </p>
      {drill.how && (
        <p>
          <b>{setsWords('howFull')}</b> {drill.how}
        </p>
      )}
      {drill.watch.length > 0 && (
        <>
          <b>{setsWords('whatWatch')}</b>
          <ul>
            {drill.watch.map((each) => (
              <li key={each}>{each}</li>
            ))}
          </ul>
        </>
      )}
      {drill.readings.length > 0 && (
        <p>
          <b>{setsWords('readingsApply2')}</b> {drill.readings.map(readingLabel).join(', ')}.
        </p>
      )}
      <CautionsList codes={drill.cautions} />
      <p className="drill-source">{setsWords('source', { source: drill.source })}</p>
    </div>
  );
}
