import { spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, readFileSync, rmSync } from 'node:fs';
import path from 'node:path';
import { ensurePackages, root, run, say } from '../electron/commands/set-up.mjs';

// `npm test`: works on a bare clone with Node and npm only, runs everything and ends with one line of sums.

const onPath = (name) =>
  (process.env.PATH ?? '')
    .split(path.delimiter)
    .some((folder) => folder !== '' && existsSync(path.join(folder, name)));

/** What npm can't bring: a Chromium, and the outside tools some tests check against. */
function ensureTools() {
  const wanted = [
    ['chromium', 'chromium'],
    ['ffmpeg', 'ffmpeg'],
    ['pdftoppm', 'poppler-utils'],
    ['unzip', 'unzip'],
  ].filter(([program]) => !onPath(program));
  if (wanted.length === 0) return;
  const names = wanted.map(([, name]) => name);
  if (process.platform === 'linux' && process.getuid?.() === 0 && onPath('apt-get')) {
    say(`installing ${names.join(', ')} (apt-get) …`);
    const env = { ...process.env, DEBIAN_FRONTEND: 'noninteractive' };
    run('apt-get', ['update', '-qq'], { env });
    run('apt-get', ['install', '-y', '-qq', '--no-install-recommends', ...names], { env });
    return;
  }
  say(`not on this machine: ${names.join(', ')}; tests that need them say so when they skip`);
  if (!names.includes('chromium')) return;
  say('fetching a Chromium for the browser tests (playwright install chromium) …');
  run(process.execPath, [
    path.join(root, 'node_modules', '@playwright', 'test', 'cli.js'),
    'install',
    'chromium',
  ]);
}

const reports = path.join(root, '.build', 'reports');
const sums = { passed: 0, failed: 0, skipped: 0 };
const failures = [];

function program(name, script, args, env = {}) {
  say(`${name} …`);
  const done = spawnSync(process.execPath, [path.join(root, 'node_modules', script), ...args], {
    cwd: root,
    stdio: 'inherit',
    env: { ...process.env, ...env },
  });
  return done.status === 0;
}

/** A step that passes or fails as a whole. */
function step(name, script, args) {
  const passed = program(name, script, args);
  sums[passed ? 'passed' : 'failed'] += 1;
  if (!passed) failures.push(name);
}

/** A runner that writes a JSON report; a run that fails without one failed test still counts as one failure. */
function runner(name, script, args, env, count) {
  const file = path.join(reports, `${name}.json`);
  const passed = program(name, script, args(file), env(file));
  const found = existsSync(file)
    ? count(JSON.parse(readFileSync(file, 'utf8')))
    : { passed: 0, failed: 0, skipped: 0 };
  if (!passed && found.failed === 0) found.failed = 1;
  for (const key of Object.keys(sums)) sums[key] += found[key];
  if (found.failed > 0) failures.push(name);
}

const vitestCounts = (report) => ({
  passed: report.numPassedTests,
  failed: report.numFailedTests,
  skipped: report.numPendingTests + (report.numTodoTests ?? 0),
});
const playwrightCounts = ({ stats }) => ({
  passed: stats.expected + stats.flaky,
  failed: stats.unexpected,
  skipped: stats.skipped,
});
/** One project of a Playwright folder: each in a run of its own, as what is held to the clock stands no neighbours. */
const playwright = (name, project) => {
  const config = `tests/${name}/playwright.config.ts`;
  if (!existsSync(path.join(root, config))) {
    sums.failed += 1;
    failures.push(`${name} (${config} is missing)`);
    return;
  }
  runner(
    `${name}-${project}`,
    '@playwright/test/cli.js',
    () => ['test', '--config', config, '--project', project, '--reporter=list,json'],
    (file) => ({ PLAYWRIGHT_JSON_OUTPUT_FILE: file }),
    playwrightCounts,
  );
};

ensurePackages();
ensureTools();
rmSync(reports, { recursive: true, force: true });
mkdirSync(reports, { recursive: true });

step('format', '@biomejs/biome/bin/biome', ['format', '.']);
step('lint', '@biomejs/biome/bin/biome', ['lint', '--error-on-warnings', '--diagnostic-level=warn', '.']);
step('unused', 'knip/bin/knip.js', ['--config', 'tests/house/knip.json', '--no-progress']);
step('types', 'typescript/bin/tsc', ['--build']);
runner(
  'unit',
  'vitest/vitest.mjs',
  (file) => [
    'run',
    '--config',
    'tests/vitest.config.ts',
    '--project',
    'core',
    '--project',
    'renderer',
    '--project',
    'electron',
    '--reporter=default',
    '--reporter=json',
    `--outputFile.json=${file}`,
  ],
  () => ({}),
  vitestCounts,
);
step('build', '../electron/commands/build.mjs', []);
playwright('browser', 'clips');
playwright('browser', 'timed');
playwright('e2e', 'stories');
playwright('e2e', 'timed');

if (failures.length > 0) say(`failed: ${failures.join(', ')}`);
console.log(`${sums.passed} passed, ${sums.failed} failed, ${sums.skipped} skipped`);
process.exitCode = sums.failed > 0 ? 1 : 0;
