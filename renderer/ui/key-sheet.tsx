import { useStore } from 'zustand';
import type { Command } from './command';
import { commandRegistry } from './command-registry';
import { Dialog } from './dialog';
import { keyWords, onMac } from './key-words';
import { ThemeSwitch } from './theme-switch';
import { uiWords } from '#core/words/ui';

/** Commands that differ only in their direction share a line. */
function lines(commands: readonly Command[]): readonly (readonly [string, readonly string[]])[] {
  const byLabel = new Map<string, Set<string>>();
  for (const { label, keys, told } of commands) {
    const caps = byLabel.get(label) ?? new Set<string>();
    for (const key of told ?? keys) caps.add(keyWords(key, onMac));
    if (caps.size > 0) byLabel.set(label, caps);
  }
  return [...byLabel].map(([label, caps]) => [label, [...caps]] as const);
}

/** Everything that has a key on this screen, and the look of the app. */
export function KeySheet({ onClose }: { readonly onClose: () => void }) {
  const groups = useStore(commandRegistry, (state) => state.groups);
  return (
    <Dialog title={uiWords('keysLook')} wide onCancel={onClose}>
      <div className="sheet-look">
        <ThemeSwitch />
        <p>{uiWords('dimDarkRoomLight')}</p>
      </div>
      <div className="key-sheet">
        {groups.map(({ heading, commands }) => (
          <section key={heading}>
            <h2>{heading}</h2>
            <dl>
              {lines(commands).map(([label, caps]) => (
                <div key={label}>
                  <dt>{label}</dt>
                  <dd>
                    {caps.map((cap) => (
                      <kbd key={cap}>{cap}</kbd>
                    ))}
                  </dd>
                </div>
              ))}
            </dl>
          </section>
        ))}
      </div>
      <footer className="dialog-foot">
        <button type="button" className="primary" data-first-focus onClick={onClose}>
          {uiWords('close')}
        </button>
      </footer>
    </Dialog>
  );
}
