import type { PracticeItem } from '#core/practice/practice-schema';
import type { Swimmer } from '#core/swim-file/squad-schema';

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
      <legend>Who swims it</legend>
      <label>
        <input
          type="checkbox"
          checked={item.swimmerIds === null}
          onChange={(event) =>
            onChange(
              { swimmerIds: event.target.checked ? null : swimmers.map(({ id }) => id) },
              'say who swims it',
            )
          }
        />
        Everyone
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
                  'say who swims it',
                )
              }
            />
            {name}
          </label>
        ))}
    </fieldset>
  );
}
