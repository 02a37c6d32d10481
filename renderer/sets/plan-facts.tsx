import type { Practice } from '#core/practice/practice-schema';
import type { Squad } from '#core/swim-file/squad-schema';
import { KeptNumber, KeptText } from '../ui/kept-field';
import type { KeptDocument } from '../documents/kept-document';
import { setFacts } from './practice-steps';
import { setsWords } from '#core/words/sets';

interface Props {
  readonly practice: Practice;
  readonly squad: Squad;
  readonly document: KeptDocument<Practice>;
}

/** Day, pool, who swims, and what the practice is for. */
export function PlanFacts({ practice, squad, document }: Props) {
  return (
    <section className="plan-facts" aria-label={setsWords('aboutPractice')}>
      <label>
        {setsWords('day')}
        <input
          type="date"
          required
          value={practice.date}
          onChange={(event) =>
            event.target.value && document.run(setFacts(setsWords('changeDay'), { date: event.target.value }))
          }
        />
      </label>
      <label>
        {setsWords('poolM')}
        <KeptNumber
          least={5}
          most={200}
          value={practice.poolMetres}
          onKeep={(metres) =>
            metres !== null && document.run(setFacts(setsWords('changePool'), { poolMetres: metres }))
          }
        />
      </label>
      <fieldset>
        <legend>{setsWords('whoSwims')}</legend>
        {squad.swimmers.length === 0 && <p>{setsWords('nobodySquadYet')}</p>}
        {squad.swimmers.map(({ id, name }) => (
          <label key={id}>
            <input
              type="checkbox"
              checked={practice.swimmerIds.includes(id)}
              onChange={(event) =>
                document.run(
                  setFacts(setsWords('sayWhoSwims'), {
                    swimmerIds: event.target.checked
                      ? [...practice.swimmerIds, id]
                      : practice.swimmerIds.filter((each) => each !== id),
                  }),
                )
              }
            />
            {name}
          </label>
        ))}
      </fieldset>
      <label className="plan-note">
        {setsWords('note3')}
        <KeptText
          value={practice.note}
          maxLength={4000}
          placeholder={setsWords('whatPractice')}
          onKeep={(note) => document.run(setFacts(setsWords('writeNote'), { note }))}
        />
      </label>
    </section>
  );
}
