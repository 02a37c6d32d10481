import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { failure, success } from '#core/host-contract/host-error';
import { firstCard, rememberCard } from '../../../renderer/card/remembered-card';
import { forgetInWindow } from '../../../renderer/library/forget-in-window';
import { noTags } from '#core/swim-file/condition-tags';

/** A browser's storage. */
class Kept {
  private readonly items = new Map<string, string>();
  get length(): number {
    return this.items.size;
  }
  key = (at: number): string | null => [...this.items.keys()][at] ?? null;
  getItem = (key: string): string | null => this.items.get(key) ?? null;
  setItem = (key: string, text: string): void => void this.items.set(key, text);
  removeItem = (key: string): void => void this.items.delete(key);
}

/** A host whose memory outlives windows, and that can be away. */
function aHost() {
  const kept = new Map<string, string>();
  const host = {
    kept,
    away: false,
    call: (name: string, input: { key?: string; text?: string | null }) => {
      if (host.away) return Promise.resolve(failure('cannot-read'));
      if (name === 'memory/read') return Promise.resolve(success({ kept: Object.fromEntries(kept) }));
      if (input.text === null) kept.delete(input.key ?? '');
      else kept.set(input.key ?? '', input.text ?? '');
      return Promise.resolve(success({}));
    },
  };
  return host;
}
type AnyHost = Parameters<import('../../../renderer/host/window-memory').WindowMemory['connect']>[0];

let createWindowMemory: typeof import('../../../renderer/host/window-memory').createWindowMemory;
beforeEach(async () => {
  vi.stubGlobal('window', { localStorage: new Kept() });
  ({ createWindowMemory } = await import('../../../renderer/host/window-memory'));
});
afterEach(() => vi.unstubAllGlobals());

const pair = 'submark-pair-a b';
const settled = () => new Promise((resolve) => setImmediate(resolve));

describe('what a window remembers', () => {
  it('follows to another window, whose own storage knows nothing of it', async () => {
    const host = aHost();
    const browser = createWindowMemory(new Kept());
    await browser.connect(host as unknown as AnyHost);
    browser.setItem('submark.theme', 'glare');
    browser.setItem(pair, '{}');
    await settled();
    const desktop = createWindowMemory(new Kept());
    expect(desktop.getItem('submark.theme')).toBeNull();
    await desktop.connect(host as unknown as AnyHost);
    await desktop.ready;
    expect(desktop.getItem('submark.theme')).toBe('glare');
    expect(desktop.getItem(pair)).toBe('{}');
  });

  it('is taken over once from the storage where earlier versions kept it, and journals stay there', async () => {
    const host = aHost();
    const storage = new Kept();
    storage.setItem('submark.theme', 'light');
    storage.setItem(pair, '{"a":1}');
    storage.setItem('submark-unsaved-a', 'marks');
    await createWindowMemory(storage).connect(host as unknown as AnyHost);
    expect(Object.fromEntries(host.kept)).toEqual({ 'submark.theme': 'light', [pair]: '{"a":1}' });
    expect([storage.length, storage.getItem('submark-unsaved-a')]).toEqual([1, 'marks']);
    // changed elsewhere since: the old window's storage does not bring the old one back
    host.kept.set('submark.theme', 'dim');
    const again = createWindowMemory(storage);
    await again.connect(host as unknown as AnyHost);
    expect(again.getItem('submark.theme')).toBe('dim');
  });

  it('waits in the window while the host is away, and reaches it at the next start', async () => {
    const host = aHost();
    const storage = new Kept();
    const first = createWindowMemory(storage);
    await first.connect(host as unknown as AnyHost);
    host.away = true;
    first.setItem('submark.theme', 'glare');
    first.removeItem('submark.theme');
    first.setItem(pair, '{}');
    await settled();
    expect(first.getItem(pair)).toBe('{}');
    expect(first.getItem('submark.theme')).toBeNull();
    host.kept.set('submark.theme', 'light');
    host.away = false;
    await createWindowMemory(storage).connect(host as unknown as AnyHost);
    expect(Object.fromEntries(host.kept)).toEqual({ [pair]: '{}' });
    expect(storage.length).toBe(0);
  });

  it('works from the window’s storage alone where the host never answers', async () => {
    const host = aHost();
    host.away = true;
    const memory = createWindowMemory(new Kept());
    await memory.connect(host as unknown as AnyHost);
    await memory.ready;
    memory.setItem('submark.theme', 'light');
    expect(memory.getItem('submark.theme')).toBe('light');
  });

  it('forgets an erased swimmer, on the host too', async () => {
    const host = aHost();
    const memory = createWindowMemory(new Kept());
    await memory.connect(host as unknown as AnyHost);
    const ada = { id: 'ada-1', name: 'Ada' };
    const begun = firstCard(memory, '2026-01-01', () => true);
    rememberCard(memory, { ...begun, swimmerId: ada.id, swimmerName: ada.name, conditions: noTags });
    memory.setItem('submark-pair-ada-swim b', '{"ids":["ada-swim","b"]}');
    memory.setItem(pair, '{"ids":["a","b"]}');
    await settled();
    expect(forgetInWindow(memory, { swimmer: ada, swimIds: ['ada-swim'] })).toBe(2);
    await settled();
    expect([...host.kept.keys()]).toEqual([pair]);
    expect(firstCard(memory, '2026-01-01', () => true).swimmerName).toBe('');
  });
});
