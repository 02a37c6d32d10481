import { describe, expect, it } from 'vitest';
import { forgetInWindow } from '../../../renderer/library/forget-in-window';

/** A window's storage as the browser gives it: keys by place, places shifting when one is removed. */
function aStorage(content: Readonly<Record<string, string>>) {
  const kept = new Map(Object.entries(content));
  return {
    kept,
    get length() {
      return kept.size;
    },
    key: (at: number) => [...kept.keys()][at] ?? null,
    getItem: (key: string) => kept.get(key) ?? null,
    removeItem: (key: string) => void kept.delete(key),
  };
}
const ada = { swimmer: { id: 's-ada', name: 'Ada' }, swimIds: ['swim-of-ada'] };

describe('what a window remembers of an erased swimmer', () => {
  it('goes by id, by name in any case, and by swim, in keys and in texts', () => {
    const storage = aStorage({
      'journal:swim-of-ada': '{"marks":[]}',
      'journal:practice:p': '{"swimmerIds":["s-ada"]}',
      'last-card': '{"swimmerName":"ADA"}',
      'journal:trial:t': '{"rows":[{"swimId":"swim-of-ada"}]}',
    });
    expect(forgetInWindow(storage, ada)).toBe(4);
    expect(storage.length).toBe(0);
  });

  it('leaves what is of others, names that only begin alike among them', () => {
    const others = {
      theme: 'glare',
      'last-card': '{"swimmerName":"Adam","swimmerId":"s-adam"}',
      'journal:swim-of-adam': '{"note":"not s-ada-2 either"}',
    };
    const storage = aStorage(others);
    expect(forgetInWindow(storage, ada)).toBe(0);
    expect(Object.fromEntries(storage.kept)).toEqual(others);
  });
});
