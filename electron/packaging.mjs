// How Submark is packed for each system: npm run package. Read by electron-builder.
// Electron's own program is fetched when a package is made, so this needs the network; nothing else here does.

/** @type {import('electron-builder').Configuration} */
export default {
  appId: 'app.submark',
  productName: 'Submark',
  copyright: 'MIT licence',
  directories: { output: '.build/packages' },
  extraMetadata: { main: '.build/electron/main.js' },
  files: [
    '.build/electron/**',
    '.build/renderer/**',
    'sample-clips/library/**',
    'sample-clips/month/**',
    'package.json',
    'LICENSE',
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
  // Electron's security checklist: "Check which fuses you can change"
  electronFuses: {
    runAsNode: false,
    enableCookieEncryption: true,
    enableNodeOptionsEnvironmentVariable: false,
    enableNodeCliInspectArguments: false,
    enableEmbeddedAsarIntegrityValidation: true,
    onlyLoadAppFromAsar: true,
    loadBrowserProcessSpecificV8Snapshot: false,
    grantFileProtocolExtraPrivileges: false,
  },
  // what is native comes ready made for each system inside its package
  npmRebuild: false,
  publish: null,
  win: { target: [{ target: 'nsis', arch: ['x64', 'arm64'] }] },
  nsis: { oneClick: false, perMachine: false, allowToChangeInstallationDirectory: true },
  mac: {
    target: [{ target: 'dmg', arch: ['x64', 'arm64'] }],
    category: 'public.app-category.sports',
    hardenedRuntime: true,
  },
  linux: { target: ['AppImage', 'deb'], category: 'Video', maintainer: 'The Submark maintainers' },
};
