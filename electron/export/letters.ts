import { readFileSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { GlobalFonts } from '@napi-rs/canvas';

const require = createRequire(import.meta.url);

/** The letters of everything the host draws: an open family (Inter, OFL) that the app brings along. */
export const hostFamily = 'Submark letters';
const files = {
  400: '@expo-google-fonts/inter/400Regular/Inter_400Regular.ttf',
  600: '@expo-google-fonts/inter/600SemiBold/Inter_600SemiBold.ttf',
} as const;

/** The bytes of the letters, for a PDF that carries them. */
export async function letterBytes(): Promise<{ readonly 400: Uint8Array; readonly 600: Uint8Array }> {
  const [regular, bold] = await Promise.all([
    readFile(require.resolve(files[400])),
    readFile(require.resolve(files[600])),
  ]);
  return { 400: regular, 600: bold };
}

let known = false;

/** Makes the letters known to the host's canvas, once. */
export function knowLetters(): void {
  if (known) return;
  // as bytes: the canvas can't look into a packed app's archive, Node can
  for (const file of Object.values(files))
    GlobalFonts.register(readFileSync(require.resolve(file)), hostFamily);
  known = true;
}
