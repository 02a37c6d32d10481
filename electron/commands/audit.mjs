import { spawnSync } from 'node:child_process';
import { root, say } from './set-up.mjs';

// Known weaknesses of what is shipped. Registries without such a list can't be asked: that is said, not passed over.
const asked = spawnSync('npm', ['audit', '--omit=dev', '--audit-level=high', '--json'], {
  cwd: root,
  encoding: 'utf8',
  shell: process.platform === 'win32',
});
let answer;
try {
  answer = JSON.parse(asked.stdout);
} catch (error) {
  if (!(error instanceof SyntaxError)) throw error;
  answer = {};
}
const counts = answer.metadata?.vulnerabilities;
if (!counts) {
  say('dependencies not audited: this registry gives no list of known weaknesses');
} else if (counts.high + counts.critical > 0) {
  for (const each of Object.values(answer.vulnerabilities))
    if (['high', 'critical'].includes(each.severity)) say(`${each.name}: ${each.severity} (${each.range})`);
  process.exit(1);
} else say(`dependencies audited: ${counts.total} known weaknesses, none high or critical`);
