import type { PracticeItem } from '#core/practice/practice-schema';
import type { Swimmer } from '#core/swim-file/squad-schema';
import { setsWords } from '#core/words/sets';

interface Props {
  readonly item: PracticeItem;
  /** Those of the practice. */
  readonly swimmers: readonly Swimmer[];
  readonly onChange: (said: Partial<PracticeItem>, name: string) => void;
}

/** Everyone, or some of the practice's swimmers. */
export function WhoSwims({ item, swimmers, onChange }: Props) {
  return (
    <fieldset className="wide who">
      <legend>{setsWords('whoSwims2')}</legend>
      <label>
        <input
          type="checkbox"
          checked={item.swimmerIds === null}
          onChange={(event) =>
            onChange(
              { swimmerIds: event.target.checked ? null : swimmers.map(({ id }) => id) },
              setsWords('sayWhoSwims2'),
            )
          }
        />
        {setsWords('everyone')}
      </label>
      {item.swimmerIds !== null &&
        swimmers.map(({ id, name }) => (
          <label key={id}>
            <input
              type="checkbox"
              checked={item.swimmerIds?.includes(id) ?? true}
              onChange={(event) =>
                onChange(
                  {
                    swimmerIds: event.target.checked
                      ? [...(item.swimmerIds ?? []), id]
                      : (item.swimmerIds ?? []).filter((each) => each !== id),
                  },
                  setsWords('sayWhoSwims2'),
                )
              }
            />
            {name}
          </label>
        ))}
    </fieldset>
  );
}
