import { makeBundle } from '../../host/bundle/make-bundle';
import { clipOnDisk, orStop, readSwimOnDisk } from '../swim-on-disk';
import { checkConsent } from './check-consent';
import { type ExportCommand, oneTarget } from './export-command';
import { moveOut } from './move-out';
import { commandLineWords } from '#core/words/command-line';

export const bundleCommand: ExportCommand = {
  name: 'bundle',
  about: commandLineWords('clipMarksHandout'),
  usage: '<swim>',
  valueFlags: [],
  plainFlags: [],
  async run(asked) {
    const target = oneTarget(asked);
    const found = await readSwimOnDisk(target);
    checkConsent(asked, [found]);
    const clip = await clipOnDisk(found);
    await moveOut(asked, (folder, signal) =>
      makeBundle({
        swim: found.swim,
        clip,
        swimFolder: found.folder,
        into: folder,
        tempId: 'bundle',
        madeAt: new Date(),
        signal,
        report: () => undefined,
      }).then(orStop),
    );
  },
};
