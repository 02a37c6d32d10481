import { existsSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { besideArchive } from '#electron/media/find-media-tool';

const root = fileURLToPath(new URL('../..', import.meta.url));
interface Packaging {
  readonly files: readonly string[];
  readonly asarUnpack: readonly string[];
  readonly extraMetadata: { readonly main: string };
  readonly electronFuses: Readonly<Record<string, boolean>>;
}
const load = async (): Promise<Packaging> =>
  ((await import(new URL('../../electron/packaging.mjs', import.meta.url).href)) as { default: Packaging })
    .default;

describe('the package', () => {
  it('holds what the program reads at run time, and starts the shell', async () => {
    const { files, extraMetadata } = await load();
    expect(files).toContain(`${path.dirname(extraMetadata.main)}/**`);
    for (const folder of files.filter((each) => each.startsWith('sample-clips')))
      expect(existsSync(path.join(root, folder.replace('/**', '')))).toBe(true);
    const build = readFileSync(path.join(root, 'electron/commands/build.mjs'), 'utf8');
    expect(build).toContain("main: 'electron/shell/main.ts'");
  });

  it('keeps every optional program package outside the archive, where it can be started', async () => {
    const { asarUnpack } = await load();
    const { optionalDependencies } = JSON.parse(readFileSync(path.join(root, 'package.json'), 'utf8')) as {
      optionalDependencies: Record<string, string>;
    };
    for (const name of Object.keys(optionalDependencies)) {
      const scope = name.startsWith('@') ? (name.split('/')[0] ?? name) : name;
      expect(asarUnpack).toContain(`node_modules/${scope}/**`);
    }
  });

  it('holds the letters of page and canvas, and has beside the archive what can’t be used in it', async () => {
    const { packedFiles } = (await import(
      new URL('../../electron/commands/packed-files.mjs', import.meta.url).href
    )) as { packedFiles(): { inside: string[]; beside: string[] } };
    const { inside, beside } = packedFiles();
    for (const file of [
      'package.json',
      'LICENSE',
      'node_modules/@expo-google-fonts/inter/400Regular/Inter_400Regular.ttf',
      'node_modules/@expo-google-fonts/inter/600SemiBold/Inter_600SemiBold.ttf',
      ...['arabic', 'devanagari', 'hebrew', 'thai', 'sc', 'jp', 'kr'].map(
        (script) => `node_modules/@fontsource-variable/noto-sans-${script}/unicode.json`,
      ),
    ])
      expect(inside).toContain(file);
    // a canvas and media tools can't be loaded or started from an archive, folders can't be copied out of one
    expect(beside).toContain('sample-clips/library/squad.json');
    expect(beside.some((file) => file.endsWith('.node'))).toBe(true);
    expect(inside.filter((file) => /\.node$|ff(mpeg|probe)(\.exe)?$|^sample-clips/.test(file))).toEqual([]);
    expect(
      [...inside, ...beside].filter((file) => /node_modules\/(electron|vite|vitest)\//.test(file)),
    ).toEqual([]);
  });

  it('has every fuse set that would let another program run its code in ours', async () => {
    const { electronFuses } = await load();
    expect(electronFuses).toEqual({
      runAsNode: false,
      enableCookieEncryption: true,
      enableNodeOptionsEnvironmentVariable: false,
      enableNodeCliInspectArguments: false,
      enableEmbeddedAsarIntegrityValidation: true,
      onlyLoadAppFromAsar: true,
      loadBrowserProcessSpecificV8Snapshot: false,
      grantFileProtocolExtraPrivileges: false,
    });
  });

  it('finds its programs beside the archive, and leaves other paths alone', () => {
    const inside = '/opt/Submark/resources/app.asar/node_modules/ffmpeg-static/ffmpeg';
    expect(besideArchive(inside)).toBe(
      '/opt/Submark/resources/app.asar.unpacked/node_modules/ffmpeg-static/ffmpeg',
    );
    expect(besideArchive('C:\\Submark\\resources\\app.asar\\node_modules\\x.exe')).toBe(
      'C:\\Submark\\resources\\app.asar.unpacked\\node_modules\\x.exe',
    );
    const plain = '/home/coach/app.asarx/node_modules/ffmpeg';
    expect(besideArchive(plain)).toBe(plain);
    expect(besideArchive(besideArchive(inside))).toBe(besideArchive(inside));
  });
});
