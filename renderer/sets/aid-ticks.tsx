import { aids as allAids, type SwimCard } from '#core/swim-file/swim-schema';
import { aidWords } from '#core/swim-file/card-words';
import { sentence } from '../card/sentence';

interface Props {
  readonly legend: string;
  readonly aids: SwimCard['aids'];
  readonly onChange: (aids: SwimCard['aids']) => void;
}

/** Which aids are used. */
export function AidTicks({ legend, aids, onChange }: Props) {
  return (
    <fieldset className="wide ticks">
      <legend>{legend}</legend>
      {allAids.map((aid) => (
        <label key={aid}>
          <input
            type="checkbox"
            checked={aids.includes(aid)}
            onChange={(event) =>
              onChange(event.target.checked ? [...aids, aid] : aids.filter((each) => each !== aid))
            }
          />
          {sentence(aidWords[aid])}
        </label>
      ))}
    </fieldset>
  );
}
