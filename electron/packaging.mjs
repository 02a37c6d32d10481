// How Submark is packed: npm run package. Read by electron-builder.
// Electron's own program is fetched when a package is made, so this needs the network; nothing else here does.
import { openToEverybody } from './packing/open-to-everybody.mjs';

/** Packages that can't be inside the host's bundles. Everything else that the host uses is in them. */
export const outsideBundles = {
  /** Native code, and programs that are started. */
  programs: ['@napi-rs/*', 'ffmpeg-static', '@ffmpeg-installer/*', '@ffprobe-installer/*'],
  /** Letters, read as files. */
  letters: ['@expo-google-fonts/inter', '@fontsource-variable/*'],
};

/** Films the system may offer Submark for, beside the program that opens them by a double click. */
const film = {
  ext: ['mp4', 'mov', 'm4v', 'mkv', 'webm', 'avi', 'mts', 'm2ts'],
  mimeTypes: [
    'video/mp4',
    'video/quicktime',
    'video/x-m4v',
    'video/x-matroska',
    'video/webm',
    'video/x-msvideo',
    'video/mp2t',
  ],
};

/** Signed with a certificate of the maker's; else only in the way Apple silicon asks of every program. */
const signed = Boolean(process.env.CSC_LINK || process.env.CSC_NAME);

/** Who publishes a package says where it comes from; a name under .invalid belongs to nobody. */
const publisher = {
  homepage: process.env.SUBMARK_HOMEPAGE ?? 'https://submark.invalid',
  maintainer: process.env.SUBMARK_MAINTAINER ?? 'The Submark maintainers <maintainers@submark.invalid>',
};

/** Canvas, ffmpeg and ffprobe are those that npm installed for this machine: a package is for its kind of machine alone. */
const arch = [process.arch];

/** @type {import('electron-builder').Configuration} */
export default {
  appId: 'app.submark',
  productName: 'Submark',
  copyright: 'MIT licence',
  directories: { output: '.build/packages', buildResources: 'electron/packing' },
  extraMetadata: { main: '.build/electron/main.js', homepage: publisher.homepage },
  files: [
    '.build/electron/**',
    // another way in, for browsers
    '!.build/electron/loopback-app.js',
    '.build/renderer/**',
    '!**/*.map',
    'sample-clips/library/**',
    'sample-clips/month/**',
    // of Linux' windows
    'electron/packing/icons/256x256.png',
    'package.json',
    'LICENSE',
    '!node_modules/**',
    'node_modules/@napi-rs/**',
    'node_modules/ffmpeg-static/**',
    'node_modules/@ffmpeg-installer/**',
    'node_modules/@ffprobe-installer/**',
    'node_modules/@expo-google-fonts/inter/package.json',
    'node_modules/@expo-google-fonts/inter/400Regular/*.ttf',
    'node_modules/@expo-google-fonts/inter/600SemiBold/*.ttf',
    'node_modules/@fontsource-variable/*/package.json',
    'node_modules/@fontsource-variable/*/unicode.json',
    'node_modules/@fontsource-variable/*/files/*-wght-normal.woff2',
  ],
  asar: true,
  // a program inside the archive can't be started, and a folder in it can't be copied: these lie beside it
  asarUnpack: [
    'sample-clips/**',
    'node_modules/ffmpeg-static/**',
    'node_modules/@ffmpeg-installer/**',
    'node_modules/@ffprobe-installer/**',
    'node_modules/@napi-rs/**',
  ],
  // written by electron/packing/write-licences.mjs
  extraResources: [{ from: '.build/licences', to: 'licences' }],
  // the window's own words are English, and so are those Chromium adds to it
  electronLanguages: ['en-US', 'en'],
  // Electron's security checklist: "Check which fuses you can change"
  electronFuses: {
    runAsNode: false,
    // Submark keeps no cookie, and the key for them would be asked for from the keychain
    enableCookieEncryption: false,
    enableNodeOptionsEnvironmentVariable: false,
    enableNodeCliInspectArguments: false,
    enableEmbeddedAsarIntegrityValidation: true,
    onlyLoadAppFromAsar: true,
    loadBrowserProcessSpecificV8Snapshot: false,
    grantFileProtocolExtraPrivileges: false,
    // a changed program loses the signature Apple silicon asks for; one that is signed afterwards gets it then
    resetAdHocDarwinSignature: process.platform === 'darwin' && !signed,
  },
  afterPack: ({ appOutDir }) => openToEverybody(appOutDir),
  // what is native comes ready made for each system inside its package
  npmRebuild: false,
  publish: null,
  win: { target: [{ target: 'nsis', arch }] },
  nsis: {
    oneClick: false,
    perMachine: false,
    allowToChangeInstallationDirectory: true,
    include: 'electron/packing/open-with.nsh',
  },
  mac: {
    target: [{ target: 'dmg', arch }],
    category: 'public.app-category.sports',
    hardenedRuntime: signed,
    // never the program a double click opens: only one of "Open with"
    fileAssociations: [
      { ext: film.ext, name: 'Film', role: 'Viewer', rank: 'Alternate' },
      { ext: 'zip', name: 'Swim bundle', role: 'Viewer', rank: 'Alternate' },
    ],
    ...(signed ? {} : { identity: null }),
  },
  linux: {
    target: [
      { target: 'AppImage', arch },
      { target: 'deb', arch },
    ],
    category: 'AudioVideo;Video;Sports',
    maintainer: publisher.maintainer,
    vendor: 'The Submark maintainers',
    synopsis: 'Underwater kick and butterfly timing, frame by frame',
    description:
      'Swimming coaches step through film of the underwater dolphin kick and of butterfly, mark what hands, feet and body do, and read rhythm, depth, timing and posture with their intervals.',
    mimeTypes: [...film.mimeTypes, 'application/zip'],
    icon: 'electron/packing/icons',
  },
  deb: { priority: 'optional', recommends: ['ffmpeg'] },
};
