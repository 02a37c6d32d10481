import type { Practice } from '#core/practice/practice-schema';
import type { Squad } from '#core/swim-file/squad-schema';
import { KeptNumber, KeptText } from '../ui/kept-field';
import type { KeptDocument } from '../documents/kept-document';
import { setFacts } from './practice-steps';

interface Props {
  readonly practice: Practice;
  readonly squad: Squad;
  readonly document: KeptDocument<Practice>;
}

/** Day, pool, who swims, and what the practice is for. */
export function PlanFacts({ practice, squad, document }: Props) {
  return (
    <section className="plan-facts" aria-label="About the practice">
      <label>
        Day
        <input
          type="date"
          required
          value={practice.date}
          onChange={(event) =>
            event.target.value && document.run(setFacts('change the day', { date: event.target.value }))
          }
        />
      </label>
      <label>
        Pool, m
        <KeptNumber
          least={5}
          most={200}
          value={practice.poolMetres}
          onKeep={(metres) =>
            metres !== null && document.run(setFacts('change the pool', { poolMetres: metres }))
          }
        />
      </label>
      <fieldset>
        <legend>Who swims</legend>
        {squad.swimmers.length === 0 && <p>Nobody is in the squad yet: name swimmers on the shelf.</p>}
        {squad.swimmers.map(({ id, name }) => (
          <label key={id}>
            <input
              type="checkbox"
              checked={practice.swimmerIds.includes(id)}
              onChange={(event) =>
                document.run(
                  setFacts('say who swims', {
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
        Note
        <KeptText
          value={practice.note}
          maxLength={4000}
          placeholder="what this practice is for"
          onKeep={(note) => document.run(setFacts('write a note', { note }))}
        />
      </label>
    </section>
  );
}
