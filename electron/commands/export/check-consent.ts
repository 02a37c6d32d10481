import { leaveToShow, namesInWords } from '#core/consent/leave-to-show';
import { stop } from '../command-end';
import type { SwimOnDisk } from '../swim-on-disk';
import type { AskedExport } from './export-command';
import { commandLineWords } from '#core/words/command-line';

/** Ends the command when pictures would show a swimmer without recorded consent and `--consent-held` was not given. */
export function checkConsent(asked: AskedExport, swims: readonly SwimOnDisk[]): void {
  const leave = leaveToShow(
    swims.map(({ swim, knowledge }) => ({ card: swim.card, swimmer: knowledge.swimmer })),
  );
  if (leave.kind === 'recorded' || asked.has('--consent-held')) return;
  stop(1, commandLineWords('noWrittenConsent', { namesIn: namesInWords(leave.names) }));
}
