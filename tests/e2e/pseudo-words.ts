import { readdir, readFile } from 'node:fs/promises';
import path from 'node:path';
import type { Page } from '@playwright/test';

/** From now on the page says every message accented, 40 % longer and in brackets. */
export async function speakPseudo(page: Page): Promise<void> {
  await page.addInitScript(() => {
    (globalThis as { submarkWords?: string }).submarkWords = 'pseudo';
  });
}

/** What people type in themselves: these are shown as they are in any language. */
const ownWords = new Set(
  'name swimmerName drill note title label cue givenBy tags text condition otherTags originalName'.split(' '),
);

/** Every word that people typed into a library. */
export async function typedWords(library: string): Promise<readonly string[]> {
  const files = await readdir(library, { recursive: true });
  const texts = await Promise.all(
    files
      .filter((file) => file.endsWith('.json') && !file.includes('.cache'))
      .map(async (file) => JSON.parse(await readFile(path.join(library, file), 'utf8')) as unknown),
  );
  const found = new Set<string>();
  const walk = (value: unknown, own: boolean): void => {
    if (typeof value === 'string' && own)
      for (const word of value.match(/[A-Za-z]{2,}/g) ?? []) found.add(word);
    if (typeof value === 'object' && value !== null)
      for (const [key, inside] of Object.entries(value))
        walk(inside, Array.isArray(value) ? own : ownWords.has(key));
  };
  for (const text of texts) walk(text, false);
  return [...found];
}

/** Names, units and keys that are the same in every language. */
const everywhere =
  'Submark Esc Ctrl Shift Del Enter Space Home End Alt Tab Hz ms km kB MB GB px fps mp MP fp CSV JSON PDF PNG WebVTT MP4 MOV MKV WebM Jan Feb Mar Apr May Jun Jul Aug Sept Sep Oct Nov Dec SD RMS';

/** Texts on the page, or read out for it, with words that come neither from the catalogue nor from people. */
export function notFromCatalogue(page: Page, typed: readonly string[]): Promise<string[]> {
  return page.evaluate(
    (known) => {
      const free = new Set(known);
      const strange = (text: string): boolean =>
        (text.match(/[A-Za-z]{2,}/g) ?? []).some((word) => !free.has(word));
      const found = new Set<string>();
      const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
      for (let node = walker.nextNode(); node; node = walker.nextNode()) {
        const text = node.textContent ?? '';
        const holder = node.parentElement;
        if (!holder || holder.closest('script, style, code, kbd, pre, textarea')) continue;
        // a word may be cut into several texts by what is drawn inside it
        if (strange(text)) found.add(`${holder.tagName.toLowerCase()}: ${text.trim().slice(0, 80)}`);
      }
      for (const each of document.querySelectorAll('[aria-label], [title], [placeholder], [alt]'))
        for (const name of ['aria-label', 'title', 'placeholder', 'alt']) {
          const text = each.getAttribute(name);
          if (text && strange(text)) found.add(`${name}: ${text.slice(0, 80)}`);
        }
      return [...found];
    },
    [...typed, ...everywhere.split(' ')],
  );
}

/** Elements whose own text is cut off by their edges. */
export function cutOff(page: Page): Promise<string[]> {
  return page.evaluate(() =>
    [...document.querySelectorAll<HTMLElement>('body *')]
      .filter((each) => {
        const own = [...each.childNodes].some(
          (node) => node.nodeType === 3 && /\[/.test(node.textContent ?? ''),
        );
        if (!own || each.closest('.unseen, [aria-hidden="true"], svg')) return false;
        const { overflowX, overflowY } = getComputedStyle(each);
        const hides = (flow: string): boolean => flow === 'hidden' || flow === 'clip';
        return (
          (hides(overflowX) && each.scrollWidth > each.clientWidth + 1) ||
          (hides(overflowY) && each.scrollHeight > each.clientHeight + 2)
        );
      })
      .map((each) => `${each.tagName.toLowerCase()}.${each.className}: ${each.textContent?.slice(0, 60)}`),
  );
}
