import { choosableReadings } from '#core/practice/choosable-readings';
import type { TrialRow } from '#core/practice/trial-row';
import type { Trial } from '#core/practice/trial-schema';
import { KeptText } from '../ui/kept-field';
import { sentence } from '../card/sentence';
import { readingOrder } from '../readings/arrange-readings';
import { groupWords } from '../readings/group-words';
import { factorNames, factorWords, type PlainFactor } from './trial-words';
import { trialsWords } from '#core/words/trials';

interface Props {
  readonly trial: Trial;
  readonly rows: readonly TrialRow[];
  readonly onChange: (said: Partial<Trial>, name: string) => void;
}

/** What the trial asks: which condition, by which readings. */
export function TrialQuestion({ trial, rows, onChange }: Props) {
  const tags = [...new Set(rows.flatMap(({ tags: { free } }) => free))].sort();
  const { factor } = trial;
  const value = factor.of === 'tag' ? `tag:${factor.tag}` : factor.of;
  if (factor.of === 'tag' && !tags.includes(factor.tag)) tags.push(factor.tag);
  return (
    <section className="trial-question" aria-label={trialsWords('question')}>
      <label>
        {trialsWords('compared')}
        <select
          value={value}
          onChange={(event) => {
            const asked = event.target.value;
            onChange(
              {
                factor: asked.startsWith('tag:')
                  ? { of: 'tag', tag: asked.slice(4) }
                  : { of: asked as PlainFactor },
              },
              trialsWords('changeWhatCompared'),
            );
          }}
        >
          {factorNames.map((of) => (
            <option key={of} value={of}>
              {sentence(factorWords({ of }))}
            </option>
          ))}
          {tags.map((tag) => (
            <option key={tag} value={`tag:${tag}`}>
              {sentence(factorWords({ of: 'tag', tag }))}
            </option>
          ))}
        </select>
      </label>
      <details>
        <summary>
          {trialsWords(trial.note === '' ? 'moreReadings' : 'moreReadingsNote', {
            readings: trial.readings.length,
          })}
        </summary>
        <label className="trial-note">
          {trialsWords('note')}
          <KeptText
            maxLength={4000}
            value={trial.note}
            onKeep={(note) => onChange({ note }, trialsWords('writeNote'))}
          />
        </label>
        <div className="trial-readings">
          {readingOrder.map((group) => (
            <fieldset key={group}>
              <legend>{groupWords[group]}</legend>
              {choosableReadings
                .filter((each) => each.group === group)
                .map(({ id, label, brief }) => (
                  <label key={id} title={brief}>
                    <input
                      type="checkbox"
                      checked={trial.readings.includes(id)}
                      disabled={!trial.readings.includes(id) && trial.readings.length >= 20}
                      onChange={(event) =>
                        onChange(
                          {
                            readings: event.target.checked
                              ? [...trial.readings, id]
                              : trial.readings.filter((each) => each !== id),
                          },
                          trialsWords('changeReadings'),
                        )
                      }
                    />
                    {label}
                  </label>
                ))}
            </fieldset>
          ))}
          <p className="caution">{trialsWords('timeDistanceKicks')}</p>
        </div>
      </details>
    </section>
  );
}
