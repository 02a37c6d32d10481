import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, describe, expect, it } from 'vitest';

const command = fileURLToPath(new URL('../../electron/commands/audit.mjs', import.meta.url));
const folder = mkdtempSync(path.join(tmpdir(), 'submark-audit-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** The audit with an npm that gives this answer. */
function auditOf(answer: unknown): { status: number | null; said: string } {
  writeFileSync(path.join(folder, 'answer'), typeof answer === 'string' ? answer : JSON.stringify(answer));
  writeFileSync(path.join(folder, 'npm'), `#!/bin/sh\ncat "${path.join(folder, 'answer')}"\n`, {
    mode: 0o755,
  });
  const run = spawnSync(process.execPath, [command], {
    encoding: 'utf8',
    env: { ...process.env, PATH: `${folder}${path.delimiter}${process.env['PATH'] ?? ''}` },
  });
  return { status: run.status, said: run.stdout };
}
const counts = { info: 0, low: 1, moderate: 2, high: 0, critical: 0, total: 3 };

describe.skipIf(process.platform === 'win32')('the audit of what is shipped', () => {
  it('fails on a high or critical weakness and names it, not on lesser ones', () => {
    const weak = auditOf({
      metadata: { vulnerabilities: { ...counts, high: 1, total: 4 } },
      vulnerabilities: { 'bad-zip': { name: 'bad-zip', severity: 'high', range: '<2' } },
    });
    expect(weak.status).toBe(1);
    expect(weak.said).toContain('bad-zip: high');
    expect(auditOf({ metadata: { vulnerabilities: counts } }).status).toBe(0);
  });

  it('says so where the registry gives no list', () => {
    for (const answer of [{ error: { code: 'ENOAUDIT' } }, 'not JSON']) {
      const asked = auditOf(answer);
      expect(asked.status).toBe(0);
      expect(asked.said).toContain('not audited');
    }
  });
});
