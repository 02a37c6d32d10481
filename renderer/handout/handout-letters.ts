import regularAddress from '@expo-google-fonts/inter/400Regular/Inter_400Regular.ttf?url';
import boldAddress from '@expo-google-fonts/inter/600SemiBold/Inter_600SemiBold.ttf?url';
import { type Letters, openLetters } from '#core/drawing/pdf-letters';

/** Name under which the page's letters are known to the window's canvas. */
export const pageFamily = 'Submark letters';

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
