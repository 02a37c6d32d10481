import { shelfWords } from '#core/words/shelf';
import { rich } from '../ui/rich';

interface Props {
  readonly onAdd: () => void;
  readonly onPath: () => void;
}

/** The first thing a coach sees of an empty library: how a swim comes to be here. */
export function EmptyShelf({ onAdd, onPath }: Props) {
  return (
    <section className="empty-shelf">
      <h2>{shelfWords('noSwimsYet')}</h2>
      <ol>
        <li>{rich(shelfWords.parts('filmShortRepeat', { b: (inside) => <strong>{inside}</strong> }))}</li>
        <li>{rich(shelfWords.parts('dropClipAnywhere', { b: (inside) => <strong>{inside}</strong> }))}</li>
        <li>{rich(shelfWords.parts('sayWhatSwumThen', { b: (inside) => <strong>{inside}</strong> }))}</li>
      </ol>
      <div className="dialog-foot">
        <button type="button" className="primary" onClick={onAdd}>
          {shelfWords('addSwims')}
        </button>
        <button type="button" onClick={onPath}>
          {shelfWords('useFileWhere')}
        </button>
      </div>
      <p className="caution">{shelfWords('underWaterNo')}</p>
    </section>
  );
}
