import type { ListedText } from '../../renderer/documents/unsaved-journal';

/** A window's storage in memory. */
export function aStorage(): ListedText & { readonly texts: Map<string, string> } {
  const texts = new Map<string, string>();
  return {
    texts,
    get length() {
      return texts.size;
    },
    key: (at) => [...texts.keys()][at] ?? null,
    getItem: (key) => texts.get(key) ?? null,
    setItem: (key, text) => void texts.set(key, text),
    removeItem: (key) => void texts.delete(key),
  };
}
