import { parentPort, workerData } from 'node:worker_threads';
import { realDisk } from '../../disk/atomic-file';
import { libraryFolder } from '../library-folder';
import { SwimFolders } from './swim-folders';
import type { ReadAnswer, ReadTask } from './read-in-threads';

/** One thread that reads swims for the shelf, a few at a time as it is told, and does nothing else. */
const folders = new SwimFolders(libraryFolder(String(workerData)), realDisk);
const port = parentPort;
if (!port) throw new Error('reading-thread is started as a thread of the host');

async function answer({ kind, ids }: ReadTask): Promise<ReadAnswer> {
  return kind === 'glance'
    ? { kind, answers: await Promise.all(ids.map((id) => folders.glance(id))) }
    : { kind, answers: await Promise.all(ids.map((id) => folders.whole(id))) };
}

port.on('message', (task: ReadTask) => {
  // a bug in here ends the thread with its error, and the host hears it
  void answer(task).then((done) => port.postMessage(done));
});
