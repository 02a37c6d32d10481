import { useMemo } from 'react';
import type { ExportSource } from '#core/exporting/export-source';
import { type Handout, mostHandoutReadings } from '#core/handout/handout-file';
import { neverCompared } from '#core/measures/never-compared';
import { targetInForce } from '#core/swim-file/target-in-force';
import { groupWords } from '../readings/group-words';
import { readingOrder } from '../readings/arrange-readings';
import type { Change } from '../documents/step-history';
import { handoutWords } from '#core/words/handout';

interface Props {
  readonly handout: Handout;
  readonly source: ExportSource;
  readonly change: (name: string, edit: Change<Handout>) => void;
}

const places = [handoutWords('firstReading'), handoutWords('secondReading'), handoutWords('thirdReading')];
const none = '';

/** Which readings stand on the page: those that can be computed; ways and times under water are never among them. */
export function ReadingChoice({ handout, source, change }: Props) {
  const { readings, definitions, swimmer } = source;
  const groups = useMemo(() => {
    const computed = new Set(
      readings.filter((each) => each.status === 'computed' && !neverCompared(each.id)).map(({ id }) => id),
    );
    return readingOrder.flatMap((group) => {
      const own = definitions.filter((each) => each.group === group && computed.has(each.id));
      return own.length > 0 ? [{ group, own }] : [];
    });
  }, [readings, definitions]);
  const labelOf = (id: string): string => definitions.find((each) => each.id === id)?.label ?? id;
  const put = (place: number, id: string): void =>
    change(id === none ? handoutWords('readingLeftOut') : handoutWords('reading'), (draft) => {
      if (id === none) draft.readings.splice(place, 1);
      else draft.readings[place] = id;
    });
  const shown = Math.min(mostHandoutReadings, handout.readings.length + 1);
  return (
    <fieldset>
      <legend>{handoutWords('readings')}</legend>
      {places.slice(0, shown).map((label, place) => {
        const id = handout.readings[place] ?? none;
        const listed = groups.some(({ own }) => own.some((each) => each.id === id));
        return (
          <label className="handout-reading" key={label}>
            <span>{label}</span>
            <select value={id} onChange={(event) => put(place, event.target.value)}>
              <option value={none}>{handoutWords('none')}</option>
              {id !== none && !listed && (
                <option value={id}>{handoutWords('notMeasuredNow', { labelOf: labelOf(id) })}</option>
              )}
              {groups.map(({ group, own }) => (
                <optgroup key={group} label={groupWords[group]}>
                  {own
                    .filter((each) => each.id === id || !handout.readings.includes(each.id))
                    .map((each) => (
                      <option key={each.id} value={each.id}>
                        {swimmer && targetInForce(swimmer, each.id)
                          ? handoutWords('hasTarget', { label: each.label })
                          : `${each.label}`}
                      </option>
                    ))}
                </optgroup>
              ))}
            </select>
          </label>
        );
      })}
      <p className="caution">{handoutWords('readingWithoutTarget')}</p>
    </fieldset>
  );
}
