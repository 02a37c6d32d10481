import { success } from '#core/host-contract/host-error';
import type { practiceOperations } from '#core/host-contract/operations/practice-operations';
import { firstDrillBook, parseDrillBook, serialiseDrillBook } from '#core/practice/drill-file';
import { parsePractice, serialisePractice } from '#core/practice/practice-file';
import { KeptFile } from '../kept-file';
import { KeptFolder } from '../kept-folder';
import type { HandlersOf, HostParts } from './handlers';

export function practiceHandlers({ folder, disk }: HostParts): HandlersOf<typeof practiceOperations> {
  const practices = new KeptFolder(folder.practices, disk, parsePractice, serialisePractice);
  const drills = new KeptFile(disk, parseDrillBook, { damaged: 'file-damaged', newer: 'file-newer-version' });
  return {
    'practice/list': async () => {
      const listed = await practices.list();
      if (!listed.ok) return listed;
      const all = listed.value.kept.map(({ value, revision }) => ({ practice: value, revision }));
      return success({
        practices: all.sort(
          ({ practice: a }, { practice: b }) =>
            b.date.localeCompare(a.date) || b.createdAt.localeCompare(a.createdAt),
        ),
        problems: listed.value.problems,
      });
    },
    'practice/read': async ({ id }) => {
      const read = await practices.read(id);
      if (!read.ok) return read;
      const { value, revision, written } = read.value;
      return success({ practice: value, revision, written });
    },
    'practice/write': ({ practice, baseRevision, lineage }) =>
      practices.write(practice, baseRevision, lineage),
    'practice/remove': ({ id }) => practices.remove(id),
    'practice/restore': ({ id }) => practices.restore(id),
    'drills/read': async () => {
      const read = await drills.readOr(folder.drills, firstDrillBook);
      return read.ok ? success({ book: read.value.value, revision: read.value.revision }) : read;
    },
    'drills/write': ({ book, baseRevision }) =>
      drills.write(folder.drills, serialiseDrillBook(book), baseRevision),
  };
}
