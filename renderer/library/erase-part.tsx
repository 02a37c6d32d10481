import type { Swimmer } from '#core/swim-file/squad-schema';
import type { ScreenProps } from '../ui/screen-props';
import { ConsentWords } from '../card/consent-words';
import { libraryWords } from '#core/words/library';

interface Props extends Pick<ScreenProps, 'go'> {
  readonly swimmers: readonly Swimmer[];
}

/** Everyone of the squad, to be erased when it is asked for. */
export function ErasePart({ swimmers, go }: Props) {
  return (
    <section className="upkeep" aria-labelledby="erase-heading">
      <h2 id="erase-heading">{libraryWords('eraseSwimmer')}</h2>
      <p>{libraryWords('whenSwimmerOr')}</p>
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
              {libraryWords('eraseName', { name: swimmer.name })}
            </button>
          </li>
        ))}
      </ul>
      {swimmers.length === 0 && <p>{libraryWords('squadEmpty')}</p>}
    </section>
  );
}
