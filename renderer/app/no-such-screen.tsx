/** For an address that leads nowhere: an old link, or one typed by hand. */
export function NoSuchScreen({ onShelf }: { readonly onShelf: () => void }) {
  return (
    <main className="no-such-screen">
      <h1>There is nothing at this address.</h1>
      <p>It may come from another version of Submark. Your swims are on the shelf.</p>
      <button type="button" className="primary" onClick={onShelf}>
        To the shelf
      </button>
    </main>
  );
}
