import { useState } from 'react';
import { cardWords } from '#core/swim-file/card-words';
import { Dialog } from '../ui/dialog';
import { bytesWords } from '../swims/fact-words';
import type { Bundles } from './use-bundles';

type How = 'both' | 'replace';

const count = (many: number, one: string): string => `${many} ${one}${many === 1 ? '' : 's'}`;

/** What came in a bundle, and what to do when the swim is on the shelf already. */
export function BundleDialog({ bundles }: { readonly bundles: Bundles }) {
  const [how, setHow] = useState<How>('both');
  const { state, keep, leave } = bundles;
  switch (state.kind) {
    case 'none':
      return null;
    case 'checking':
      return (
        <Dialog title="Swim bundle" onCancel={() => undefined}>
          <output>Checking {state.name}…</output>
        </Dialog>
      );
    case 'refused':
      return (
        <Dialog title={`${state.name} was not taken`} onCancel={leave}>
          <p role="alert" className="message message-trouble">
            {state.words}
          </p>
          <footer className="dialog-foot">
            <button type="button" className="primary" data-first-focus onClick={leave}>
              Close
            </button>
          </footer>
        </Dialog>
      );
    case 'arrived': {
      const { card, there, bytes, eventCount, postureCount } = state.bundle;
      const { title, facts } = cardWords(card);
      return (
        <Dialog title={title} onCancel={leave}>
          <p>
            {[...facts, count(eventCount, 'event'), count(postureCount, 'body line'), bytesWords(bytes)].join(
              ' · ',
            )}
          </p>
          <p className="caution">
            Every file in the bundle is whole and as it was packed. Whether the swimmer may be shown is asked
            of you as of any swim.
          </p>
          {there && (
            <fieldset>
              <legend>
                {there.same
                  ? 'This swim is on the shelf already, with the same marks'
                  : 'This swim is on the shelf already, with other marks'}
              </legend>
              <label className="bundle-how">
                <input type="radio" name="how" checked={how === 'both'} onChange={() => setHow('both')} />
                Keep both
              </label>
              <label className="bundle-how">
                <input
                  type="radio"
                  name="how"
                  checked={how === 'replace'}
                  onChange={() => setHow('replace')}
                />
                Replace the one here; it goes into the bin
              </label>
            </fieldset>
          )}
          <footer className="dialog-foot">
            <button
              type="button"
              className="primary"
              data-first-focus
              onClick={() => void keep(there ? how : 'new')}
            >
              Put on the shelf
            </button>
            <button type="button" onClick={leave}>
              Leave it out
            </button>
          </footer>
        </Dialog>
      );
    }
  }
}
