import {
  chmodSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readFileSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { besideArchive } from '#electron/media/find-media-tool';

const root = fileURLToPath(new URL('../..', import.meta.url));
interface Packaging {
  readonly files: readonly string[];
  readonly asarUnpack: readonly string[];
  readonly extraMetadata: { readonly main: string; readonly homepage: string };
  readonly extraResources: readonly object[];
  readonly electronFuses: Readonly<Record<string, boolean>>;
  readonly win: { readonly target: readonly { readonly arch: readonly string[] }[] };
  readonly mac: Packaging['win'] & {
    readonly fileAssociations: readonly { readonly ext: string | readonly string[]; readonly rank: string }[];
  };
  readonly linux: Packaging['win'] & {
    readonly maintainer: string;
    readonly synopsis: string;
    readonly mimeTypes: readonly string[];
  };
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
    const icon = /'(electron\/packing\/\S+\.png)'/.exec(
      readFileSync(path.join(root, 'electron/shell/open-window.ts'), 'utf8'),
    )?.[1];
    expect(files).toContain(icon);
    expect(existsSync(path.join(root, icon ?? ''))).toBe(true);
    const build = readFileSync(path.join(root, 'electron/commands/build.mjs'), 'utf8');
    expect(build).toContain("main: 'electron/shell/main.ts'");
  });

  it('keeps every optional program package outside the archive, where it can be started', async () => {
    const { asarUnpack, files } = await load();
    const { optionalDependencies } = JSON.parse(readFileSync(path.join(root, 'package.json'), 'utf8')) as {
      optionalDependencies: Record<string, string>;
    };
    for (const name of Object.keys(optionalDependencies)) {
      const scope = name.startsWith('@') ? (name.split('/')[0] ?? name) : name;
      expect(asarUnpack).toContain(`node_modules/${scope}/**`);
      expect(files).toContain(`node_modules/${scope}/**`);
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
    // what the window uses is in its own bundles: of packages, the archive holds letters alone
    const others = inside.filter(
      (file) =>
        file.startsWith('node_modules/') &&
        !/^node_modules\/(@expo-google-fonts|@fontsource-variable)\//.test(file),
    );
    expect(others).toEqual([]);
    expect(inside.filter((file) => file.endsWith('.map'))).toEqual([]);
    // it was 158 MB with every package in it; OpenCV, networks and the letters of seven scripts are most of what is left
    const bytes = inside.reduce((sum, file) => sum + statSync(path.join(root, file)).size, 0);
    expect(bytes).toBeLessThan(158e6 / 2);
  });

  it('is for the kind of machine it is made on, whose canvas and programs it carries', async () => {
    const { win, mac, linux } = await load();
    for (const { target } of [win, mac, linux])
      for (const each of target) expect(each.arch).toEqual([process.arch]);
  });

  it('says who publishes it and what it is, as a Debian package must', async () => {
    const { linux, extraMetadata } = await load();
    expect(new URL(extraMetadata.homepage).protocol).toBe('https:');
    expect(linux.maintainer).toMatch(/^[^<]+ <[^@>]+@[^>]+>$/);
    expect(linux.synopsis.length).toBeLessThan(80);
  });

  it('offers itself for film and bundles, and takes no double click away from another program', async () => {
    const { mac, linux } = await load();
    const setup = readFileSync(path.join(root, 'electron/packing/open-with.nsh'), 'utf8');
    const onMac = mac.fileAssociations.flatMap(({ ext }) => ext);
    for (const each of ['mp4', 'mov', 'mkv', 'zip']) {
      expect(onMac).toContain(each);
      expect(setup).toContain(`SupportedTypes" ".${each}"`);
    }
    expect(mac.fileAssociations.every(({ rank }) => rank === 'Alternate')).toBe(true);
    expect(linux.mimeTypes).toEqual(
      expect.arrayContaining(['video/mp4', 'video/quicktime', 'application/zip']),
    );
    // a class of an ending would make Submark the program for it
    expect(setup).not.toMatch(/Software\\Classes\\\./);
  });

  it.skipIf(process.platform === 'win32')(
    'opens everything to every account: programs can be started, files read, folders entered',
    async () => {
      const { openToEverybody } = (await import(
        new URL('../../electron/packing/open-to-everybody.mjs', import.meta.url).href
      )) as { openToEverybody(folder: string): Promise<void> };
      const folder = mkdtempSync(path.join(tmpdir(), 'submark-modes-'));
      try {
        const put = (name: string, mode: number, text = 'words') => {
          mkdirSync(path.dirname(path.join(folder, name)), { recursive: true, mode: 0o700 });
          writeFileSync(path.join(folder, name), text);
          chmodSync(path.join(folder, name), mode);
        };
        put('submark', 0o700, '\u007fELF');
        put('resources/app.asar', 0o600);
        put('resources/modules/ffprobe', 0o744, '\u007fELF');
        put('resources/modules/ffmpeg', 0o600, '\u007fELF');
        put('resources/modules/notes/ffmpeg', 0o600, 'About ffmpeg');
        put('chrome-sandbox', 0o4755, '\u007fELF');
        await openToEverybody(folder);
        const mode = (name: string) => (statSync(path.join(folder, name)).mode & 0o7777).toString(8);
        expect(mode('submark')).toBe('755');
        expect(mode('resources')).toBe('755');
        expect(mode('resources/app.asar')).toBe('644');
        expect(mode('resources/modules/ffprobe')).toBe('755');
        expect(mode('resources/modules/ffmpeg')).toBe('755');
        expect(mode('resources/modules/notes/ffmpeg')).toBe('644');
        expect(mode('chrome-sandbox')).toBe('4755');
      } finally {
        rmSync(folder, { recursive: true, force: true });
      }
    },
  );

  it('has an icon in every size the systems ask for, drawn by its script', async () => {
    const drawing = (await import(new URL('../../electron/packing/draw-icon.mjs', import.meta.url).href)) as {
      iconFiles(): Record<string, Buffer>;
      windowsSizes: number[];
      macTypes: Record<string, number>;
    };
    const kept = (name: string) => readFileSync(path.join(root, 'electron/packing', name));
    const sizeOf = (png: Buffer) => {
      expect(png.subarray(1, 4).toString()).toBe('PNG');
      return png.readUInt32BE(16);
    };
    for (const name of Object.keys(drawing.iconFiles()).filter((each) => each.endsWith('.png')))
      expect(`icons/${sizeOf(kept(name))}x${kept(name).readUInt32BE(20)}.png`).toBe(name);
    const ico = kept('icon.ico');
    expect(ico.readUInt16LE(4)).toBe(drawing.windowsSizes.length);
    drawing.windowsSizes.forEach((size, n) => {
      const at = ico.readUInt32LE(6 + 16 * n + 12);
      expect(sizeOf(ico.subarray(at, at + ico.readUInt32LE(6 + 16 * n + 8)))).toBe(size);
    });
    const icns = kept('icon.icns');
    expect(icns.readUInt32BE(4)).toBe(icns.length);
    const types: Record<string, number> = {};
    for (let at = 8; at < icns.length; at += icns.readUInt32BE(at + 4))
      types[icns.subarray(at, at + 4).toString()] = sizeOf(
        icns.subarray(at + 8, at + icns.readUInt32BE(at + 4)),
      );
    expect(types).toEqual(drawing.macTypes);
  });

  it('carries the licence of everything in it, and says where ffmpeg’s source is', async () => {
    const { licenceFiles, licenceOf } = (await import(
      new URL('../../electron/packing/write-licences.mjs', import.meta.url).href
    )) as {
      licenceFiles(): Record<string, string>;
      licenceOf(folder: string): { licence: string | null; program: boolean };
    };
    const { shippedPackages } = (await import(
      new URL('../../electron/packing/shipped-packages.mjs', import.meta.url).href
    )) as { shippedPackages(): string[] };
    const { extraResources } = await load();
    expect(extraResources).toContainEqual({ from: '.build/licences', to: 'licences' });
    const texts = licenceFiles();
    const packages = texts['npm packages and letters.txt'] ?? '';
    for (const name of ['react', 'konva', 'mediabunny', '@napi-rs/canvas', 'zod', '@techstark/opencv-js'])
      expect(packages).toContain(`\n${name} `);
    expect(packages).toContain('SIL OPEN FONT LICENSE');
    expect(packages).toContain('Mozilla Public License');
    expect(texts['GPL-3.0.txt']).toContain('Version 3, 29 June 2007');
    expect(texts['ffmpeg and ffprobe.txt']).toContain('https://git.ffmpeg.org/ffmpeg.git');
    // the GPL is that of programs which are started; nothing under it may come to be part of the app
    for (const folder of shippedPackages()) {
      const { licence, program } = licenceOf(folder);
      if (!program) expect(licence ?? '', folder).not.toMatch(/GPL/);
    }
  });

  it('has every fuse set that would let another program run its code in ours', async () => {
    const { electronFuses } = await load();
    expect(electronFuses).toEqual({
      runAsNode: false,
      enableCookieEncryption: false,
      enableNodeOptionsEnvironmentVariable: false,
      enableNodeCliInspectArguments: false,
      enableEmbeddedAsarIntegrityValidation: true,
      onlyLoadAppFromAsar: true,
      loadBrowserProcessSpecificV8Snapshot: false,
      grantFileProtocolExtraPrivileges: false,
      // not a fuse: signs again what the fuses changed, on the only system where that is needed
      resetAdHocDarwinSignature: process.platform === 'darwin',
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
