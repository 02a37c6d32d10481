import { readFileSync, rmSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { outsideBundles } from '../packaging.mjs';
import { root, run, stampBuild } from './set-up.mjs';

// --commonjs: also the main process as a CommonJS bundle, for Electron before 28, which can't start from an ES module.
// Only the shell's test project asks for it; nothing that is shipped needs it.
const commonjs = process.argv.includes('--commonjs');

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

// what an earlier version built and this one doesn't would be packed too
rmSync(path.join(root, '.build', 'electron'), { recursive: true, force: true });
const { build } = await import('esbuild');
const common = {
  bundle: true,
  platform: 'node',
  target: 'node20',
  // the host's packages go into its bundles: a package for another machine then holds no file that nothing reads
  packages: 'bundle',
  external: ['electron', ...outsideBundles.programs],
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
    'reading-thread': 'electron/host/shelf/reading-thread.ts',
  },
  // packages of the older kind use these, which an ES module doesn't have
  banner: {
    js: [
      "import { createRequire as requireFor } from 'node:module';",
      "import { fileURLToPath as placeOf } from 'node:url';",
      'const require = requireFor(import.meta.url);',
      'const __filename = placeOf(import.meta.url);',
      "const __dirname = placeOf(new URL('.', import.meta.url));",
    ].join('\n'),
  },
});
// a sandboxed preload can only be CommonJS and may load nothing but electron
await build({
  ...common,
  format: 'cjs',
  outfile: '.build/electron/preload.cjs',
  entryPoints: ['electron/shell/preload.ts'],
});
if (commonjs) {
  const { name, productName, version } = JSON.parse(readFileSync(path.join(root, 'package.json'), 'utf8'));
  await build({
    ...common,
    target: 'node18',
    format: 'cjs',
    outfile: '.build/commonjs/main.js',
    entryPoints: ['electron/shell/main.ts'],
    define: { 'import.meta.url': 'ownAddress' },
    banner: {
      js: [
        "const ownAddress = require('node:url').pathToFileURL(__filename).href;",
        // asked for by execa; Node has them from 18.17 and 18.18, the old Electron's is 18.15. The values are Node's of then.
        "require('node:stream').getDefaultHighWaterMark ??= (objects) => (objects ? 16 : 16384);",
        "require('node:events').addAbortListener ??= (signal, act) => signal.addEventListener('abort', act, { once: true });",
        // until 20.18 Node's own throws, where nobody can catch it, when a reader breaks off just as its file ends
        "require('node:stream').Readable.toWeb = (from) => {",
        '  const pieces = from[Symbol.asyncIterator]();',
        '  const pull = (to) => pieces.next().then(({ done, value }) => (done ? to.close() : to.enqueue(value)));',
        '  return new ReadableStream({ pull, cancel: () => pieces.return().then(() => undefined) });',
        '};',
      ].join('\n'),
    },
  });
  writeFileSync(
    path.join(root, '.build', 'commonjs', 'package.json'),
    JSON.stringify({ name, productName, version, type: 'commonjs', main: 'main.js' }),
  );
}
stamp();
