import path from 'node:path';
import { root, run, stampBuild } from './set-up.mjs';

// what is built is what the sources are now, whatever changes meanwhile
const stamp = stampBuild();
run(process.execPath, [
  path.join(root, 'node_modules', 'vite', 'bin', 'vite.js'),
  'build',
  '--config',
  'renderer/vite.config.ts',
  '--configLoader',
  'runner',
  '--logLevel',
  'warn',
]);

const { build } = await import('esbuild');
const common = {
  bundle: true,
  platform: 'node',
  target: 'node20',
  packages: 'external',
  sourcemap: true,
  absWorkingDir: root,
  logLevel: 'warning',
};
await build({
  ...common,
  format: 'esm',
  outdir: '.build/electron',
  entryPoints: {
    'loopback-app': 'electron/loopback/loopback-app.ts',
    main: 'electron/shell/main.ts',
    readings: 'electron/commands/readings.ts',
    'reading-thread': 'electron/host/shelf/reading-thread.ts',
  },
  external: ['electron'],
});
// a sandboxed preload can only be CommonJS and may load nothing but electron
await build({
  ...common,
  format: 'cjs',
  packages: 'bundle',
  outfile: '.build/electron/preload.cjs',
  entryPoints: ['electron/shell/preload.ts'],
  external: ['electron'],
});
stamp();
