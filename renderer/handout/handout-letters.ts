import regularAddress from '@expo-google-fonts/inter/400Regular/Inter_400Regular.ttf?url';
import boldAddress from '@expo-google-fonts/inter/600SemiBold/Inter_600SemiBold.ttf?url';
import { useEffect, useMemo, useState } from 'react';
import { type Letters, openLetters } from '#core/drawing/pdf-letters';
import type { HostClient } from '../host/host-client';
import { handoutWords } from '#core/words/handout';

/** Name under which the page's letters are known to the window's canvas. */
export const pageFamily = handoutWords('submarkLetters');

export type HandoutLetters = Letters;

/** The letters of the page, for measuring, for the PDF, and for the canvas that shows it. */
export async function loadLetters(): Promise<HandoutLetters> {
  const bytesOf = async (address: string): Promise<Uint8Array<ArrayBuffer>> =>
    new Uint8Array(await (await fetch(address)).arrayBuffer());
  const [regular, bold] = await Promise.all([bytesOf(regularAddress), bytesOf(boldAddress)]);
  for (const [bytes, weight] of [
    [regular, '400'],
    [bold, '600'],
  ] as const)
    document.fonts.add(await new FontFace(pageFamily, bytes.buffer, { weight }).load());
  return openLetters({ 400: regular, 600: bold });
}

/**
 * The page's letters with the files of other scripts that these words need, asked from the host one after another. Letters
 * that can't be had stay missing, and the page says which.
 */
export function useLettersFor(
  words: string,
  letters: HandoutLetters,
  host: Pick<HostClient, 'lettersAddress'>,
): HandoutLetters {
  const [others, setOthers] = useState<readonly Uint8Array[]>([]);
  const [asked, setAsked] = useState<ReadonlySet<string>>(new Set());
  const all = useMemo(
    () => (others.length === 0 ? letters : openLetters(letters.bytes, others)),
    [letters, others],
  );
  useEffect(() => {
    const missing = all.missing(words).filter((letter) => !asked.has(letter));
    const [first] = missing;
    if (first === undefined) return;
    const leaving = new AbortController();
    const fetchFile = async (): Promise<Uint8Array | null> => {
      const answer = await fetch(host.lettersAddress(missing.slice(0, 60).join('')), {
        signal: leaving.signal,
      });
      return answer.ok ? new Uint8Array(await answer.arrayBuffer()) : null;
    };
    void fetchFile()
      // without the host the letters stay missing, which the page says
      .catch(() => null)
      .then((bytes) => {
        if (leaving.signal.aborted) return;
        setAsked((before) => new Set([...before, first]));
        if (bytes) setOthers((before) => [...before, bytes]);
      });
    return () => leaving.abort();
  }, [all, words, asked, host]);
  return all;
}
