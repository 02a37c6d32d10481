import { appWords } from '#core/words/app';

/** For an address that leads nowhere: an old link, or one typed by hand. */
export function NoSuchScreen({ onShelf }: { readonly onShelf: () => void }) {
  return (
    <main className="no-such-screen">
      <h1>{appWords('nothingHere')}</h1>
      <p>{appWords('otherVersion')}</p>
      <button type="button" className="primary" onClick={onShelf}>
        {appWords('toShelf')}
      </button>
    </main>
  );
}
