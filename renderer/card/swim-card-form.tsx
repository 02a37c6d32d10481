import {
  aids,
  armPositions,
  efforts,
  sidesUp,
  strokes,
  type SwimCard,
  views,
} from '#core/swim-file/swim-schema';
import type { Squad } from '#core/swim-file/squad-schema';

const plain = (code: string): string => {
  const words = code.replaceAll('-', ' ');
  return words.charAt(0).toUpperCase() + words.slice(1);
};

interface PickProps<T extends string> {
  readonly label: string;
  readonly value: T;
  readonly choices: readonly T[];
  readonly onPick: (value: T) => void;
}
function Pick<T extends string>({ label, value, choices, onPick }: PickProps<T>) {
  return (
    <label>
      {label}
      <select value={value} onChange={(event) => onPick(event.target.value as T)}>
        {choices.map((each) => (
          <option key={each} value={each}>
            {plain(each)}
          </option>
        ))}
      </select>
    </label>
  );
}

interface Props {
  readonly card: SwimCard;
  readonly squad: Squad;
  readonly onChange: (card: SwimCard) => void;
}

/** What the coach says of a swim: who, when, what was swum and how it was filmed. */
export function SwimCardForm({ card, squad, onChange }: Props) {
  const set = (said: Partial<SwimCard>): void => onChange({ ...card, ...said });
  const known = squad.swimmers.find((each) => each.id === card.swimmerId);
  return (
    <div className="card-form">
      <label>
        Swimmer
        <input
          list="squad-names"
          value={card.swimmerName}
          maxLength={120}
          autoComplete="off"
          onChange={(event) => {
            const name = event.target.value;
            const swimmer = squad.swimmers.find(
              (each) => each.name.toLocaleLowerCase() === name.trim().toLocaleLowerCase(),
            );
            set({ swimmerName: name, swimmerId: swimmer?.id ?? null });
          }}
        />
        <datalist id="squad-names">
          {squad.swimmers.map((each) => (
            <option key={each.id} value={each.name} />
          ))}
        </datalist>
      </label>
      <label>
        Date
        <input
          type="date"
          required
          value={card.date}
          onChange={(event) => event.target.value && set({ date: event.target.value })}
        />
      </label>
      <Pick label="Stroke" value={card.stroke} choices={strokes} onPick={(stroke) => set({ stroke })} />
      <label>
        Drill
        <input
          value={card.drill}
          maxLength={200}
          placeholder="leave empty for the plain stroke"
          onChange={(event) => set({ drill: event.target.value })}
        />
      </label>
      <Pick label="Arms" value={card.arms} choices={armPositions} onPick={(arms) => set({ arms })} />
      <Pick label="Side up" value={card.sideUp} choices={sidesUp} onPick={(sideUp) => set({ sideUp })} />
      <Pick
        label="Effort"
        value={card.effort ?? 'not-said'}
        choices={['not-said', ...efforts] as const}
        onPick={(effort) => set({ effort: effort === 'not-said' ? null : effort })}
      />
      <label>
        Distance, m
        <input
          type="number"
          min="1"
          max="10000"
          step="any"
          value={card.distanceMetres ?? ''}
          onChange={(event) => {
            const metres = event.target.valueAsNumber;
            set({ distanceMetres: metres > 0 && metres <= 10_000 ? metres : null });
          }}
        />
      </label>
      <Pick label="Filmed from" value={card.view} choices={views} onPick={(view) => set({ view })} />
      <fieldset>
        <legend>Aids</legend>
        {aids.map((aid) => (
          <label key={aid}>
            <input
              type="checkbox"
              checked={card.aids.includes(aid)}
              onChange={(event) =>
                set({
                  aids: event.target.checked ? [...card.aids, aid] : card.aids.filter((each) => each !== aid),
                })
              }
            />
            {plain(aid)}
          </label>
        ))}
      </fieldset>
      <label className="wide">
        Note
        <textarea
          rows={2}
          maxLength={4000}
          value={card.note}
          onChange={(event) => set({ note: event.target.value })}
        />
      </label>
      {!known?.consent && (
        <p className="caution wide">
          No written consent is recorded for this swimmer. For a minor it is the guardian’s to give; film no
          one else, and delete on request.
        </p>
      )}
    </div>
  );
}
