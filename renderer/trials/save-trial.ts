import { errorWords } from '#core/host-contract/error-words';
import type { Result } from '#core/host-contract/host-error';
import { trialCsv } from '#core/practice/trial-csv';
import type { TrialRow } from '#core/practice/trial-row';
import type { Trial } from '#core/practice/trial-schema';
import type { HostClient } from '../host/host-client';
import { safeFileName } from '#core/exporting/safe-file-name';
import type { TrialOnPaper } from './trial-on-paper';
import { trialTitle } from './trial-words';
import { trialsWords } from '#core/words/trials';

type Host = Pick<HostClient, 'sendExport'>;

/** The trial's table in the library's exports; the answer says where it is, or why it is not. */
export async function saveTrialCsv(host: Host, trial: Trial, rows: readonly TrialRow[]): Promise<string> {
  const text = trialCsv(rows, trial.readings);
  const name = safeFileName([trialTitle(trial.title), 'trial'], 'csv');
  return savedWords(await host.sendExport(name, new Blob([text], { type: 'text/csv' })));
}

/** The trial on one page. */
export async function saveTrialPage(host: Host, paper: TrialOnPaper): Promise<string> {
  // the PDF maker is large and seldom wanted: it is loaded only now
  const { trialPagePdf } = await import('./trial-page-pdf');
  const name = safeFileName([trialTitle(paper.trial.title), 'trial'], 'pdf');
  return savedWords(await host.sendExport(name, await trialPagePdf(paper)));
}

function savedWords(saved: Result<{ readonly path: string }>): string {
  if (saved.ok) return trialsWords('saved', { path: saved.value.path });
  const { what, todo } = errorWords(saved.error);
  return trialsWords('notSaved', { what, todo });
}
