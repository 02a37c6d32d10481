import { choosableReadings } from '#core/practice/choosable-readings';
import { readingOrder } from '../readings/arrange-readings';
import { groupWords } from '../readings/group-words';
import { seasonWords } from '#core/words/season';

interface Props {
  /** How many swims have each reading, by its id. */
  readonly counts: ReadonlyMap<string, number>;
  readonly reading: string | null;
  readonly onChoose: (id: string) => void;
}

/** The readings that a swimmer's swims have, with how many swims each. */
export function ReadingChoice({ counts, reading, onChoose }: Props) {
  return (
    <label>
      {seasonWords('reading')}
      <select
        value={reading ?? ''}
        disabled={counts.size === 0}
        onChange={(event) => onChoose(event.target.value)}
      >
        {reading === null && <option value="">{seasonWords('noneYet')}</option>}
        {readingOrder.map((group) => {
          const inGroup = choosableReadings.filter((each) => each.group === group && counts.has(each.id));
          return inGroup.length === 0 ? null : (
            <optgroup key={group} label={groupWords[group]}>
              {inGroup.map(({ id, label }) => (
                <option key={id} value={id}>
                  {label} ({counts.get(id)})
                </option>
              ))}
            </optgroup>
          );
        })}
      </select>
    </label>
  );
}
