import { errorWords } from '#core/host-contract/error-words';
import type { Drill } from '#core/practice/drill-schema';
import type { Practice } from '#core/practice/practice-schema';
import type { Squad } from '#core/swim-file/squad-schema';
import type { HostClient } from '../host/host-client';
import { safeFileName } from '#core/exporting/safe-file-name';
import { titleOf } from './sets-words';
import { setsWords } from '#core/words/sets';

/** Makes the practice card as a PDF in the library's exports; the answer says where it is, or why it is not. */
export async function savePracticeCard(
  host: Pick<HostClient, 'sendExport'>,
  practice: Practice,
  squad: Squad,
  own: readonly Drill[],
): Promise<string> {
  // the PDF maker is large and seldom wanted: it is loaded only now
  const { practiceCardPdf } = await import('./practice-card-pdf');
  const pdf = await practiceCardPdf(practice, squad, own);
  const name = safeFileName([practice.date, titleOf(practice), setsWords('practiceCard')], 'pdf');
  const saved = await host.sendExport(name, pdf);
  if (saved.ok) return setsWords('saved', { path: saved.value.path });
  const { what, todo } = errorWords(saved.error);
  return setsWords('notSaved', { what, todo });
}
