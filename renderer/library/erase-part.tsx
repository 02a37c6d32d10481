import type { Swimmer } from '#core/swim-file/squad-schema';
import type { ScreenProps } from '../ui/screen-props';
import { ConsentWords } from '../card/consent-words';

interface Props extends Pick<ScreenProps, 'go'> {
  readonly swimmers: readonly Swimmer[];
}

/** Everyone of the squad, to be erased when it is asked for. */
export function ErasePart({ swimmers, go }: Props) {
  return (
    <section className="upkeep" aria-labelledby="erase-heading">
      <h2 id="erase-heading">Erase a swimmer</h2>
      <p>
        When a swimmer or guardian asks for it. You see every file first; afterwards the whole library is
        looked through, and what lies elsewhere is named.
      </p>
      <ul className="bin-list">
        {swimmers.map((swimmer) => (
          <li key={swimmer.id}>
            <span>
              <strong>{swimmer.name}</strong>
              <small>
                <ConsentWords swimmer={swimmer} />
              </small>
            </span>
            <button
              type="button"
              className="danger"
              onClick={() => go({ screen: 'library', ids: [swimmer.id] })}
            >
              Erase {swimmer.name}…
            </button>
          </li>
        ))}
      </ul>
      {swimmers.length === 0 && <p>The squad is empty.</p>}
    </section>
  );
}
