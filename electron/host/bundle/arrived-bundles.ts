import { hasPoint } from '#core/swim-file/has-point';
import { mkdir, readFile, rename, rm, stat, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { failure, type Result, success } from '#core/host-contract/host-error';
import type { ArrivedBundle } from '#core/host-contract/operations/bundle-operations';
import { serialiseSwim } from '#core/swim-file/swim-file';
import type { Swim } from '#core/swim-file/swim-schema';
import { draftName } from '../../disk/drafts';
import { fileFailure } from '../../disk/file-errors';
import type { LibraryFolder } from '../library-folder';
import { prettyJson } from '../pretty-json';
import { receiveBody } from '../../disk/receive-body';
import type { SwimShelf } from '../shelf/swim-shelf';
import { unpackBundle } from './unpack-bundle';
import { hostJobsWords } from '#core/words/host-jobs';

type How = 'new' | 'both' | 'replace';

/** Bundles that arrived and were checked, but are not on the shelf yet. */
export class ArrivedBundles {
  private readonly arrived = new Map<string, { readonly folder: string; readonly swim: Swim }>();

  constructor(
    private readonly folder: LibraryFolder,
    private readonly shelf: SwimShelf,
    private readonly makeId: () => string,
  ) {}

  /** Takes the bytes of a bundle, checks them whole and unpacks them beside the shelf. Nothing is left on a failure. */
  async arrive(body: ReadableStream<Uint8Array> | null): Promise<Result<ArrivedBundle>> {
    if (!body) return failure('empty-file', { name: hostJobsWords('bundle') });
    const bundleId = this.makeId();
    const zip = path.join(this.folder.arriving, draftName(bundleId, '.zip'));
    try {
      const received = await receiveBody(body, zip, { name: hostJobsWords('bundle') });
      return received.ok ? await this.check(bundleId, zip) : received;
    } finally {
      await rm(zip, { force: true });
    }
  }

  /** Checks a bundle that lies on this computer, which stays as it is. */
  async open(file: string): Promise<Result<ArrivedBundle>> {
    if (!path.isAbsolute(file) || file.includes('\0')) return failure('not-allowed', { name: file });
    return this.check(this.makeId(), file);
  }

  private async check(bundleId: string, zip: string): Promise<Result<ArrivedBundle>> {
    const into = path.join(this.folder.arriving, draftName(bundleId, '.bundle'));
    try {
      const unpacked = await unpackBundle(zip, into);
      if (!unpacked.ok) {
        await rm(into, { recursive: true, force: true });
        return unpacked;
      }
      const { swim, manifest } = unpacked.value;
      this.arrived.set(bundleId, { folder: into, swim });
      const there = await this.shelf.read(swim.id);
      const clipName = swim.clip.place.kind === 'inside' ? swim.clip.place.name : '';
      return success({
        bundleId,
        swimId: swim.id,
        card: swim.card,
        clipName,
        bytes: manifest.files.reduce((sum, each) => sum + each.bytes, 0),
        eventCount: swim.events.length,
        postureCount: swim.postures.filter(hasPoint).length,
        changedAt: swim.changedAt,
        there: there.ok
          ? {
              card: there.value.swim.card,
              changedAt: there.value.swim.changedAt,
              same: saysTheSame(there.value.swim, swim),
            }
          : null,
      });
    } catch (error) {
      await rm(into, { recursive: true, force: true });
      return fileFailure(error, hostJobsWords('bundle'), 'writing');
    }
  }

  async keep(bundleId: string, as: How): Promise<Result<{ swimId: string }>> {
    const found = this.arrived.get(bundleId);
    if (!found) return failure('not-found', { name: hostJobsWords('bundle') });
    const swimId = as === 'both' ? this.makeId() : found.swim.id;
    const target = this.shelf.folderOf(swimId);
    try {
      const taken = await stat(target).then(
        () => true,
        () => false,
      );
      if (taken && as !== 'replace') return failure('already-there', { name: found.swim.clip.originalName });
      if (as === 'both') await this.rename(found, swimId);
      if (taken) {
        const removed = await this.intoBin(swimId);
        if (!removed.ok) return removed;
      }
      await mkdir(path.dirname(target), { recursive: true });
      await rename(found.folder, target);
    } catch (error) {
      return fileFailure(error, found.swim.clip.originalName, 'writing');
    }
    this.arrived.delete(bundleId);
    return success({ swimId });
  }

  async discard(bundleId: string): Promise<Result<Record<string, never>>> {
    const found = this.arrived.get(bundleId);
    this.arrived.delete(bundleId);
    if (found) await rm(found.folder, { recursive: true, force: true });
    return success({});
  }

  /** Gives an unpacked swim another id: in its own file and in its handout's. */
  private async rename(
    { folder, swim }: { readonly folder: string; readonly swim: Swim },
    id: string,
  ): Promise<void> {
    const file = path.join(folder, 'swim.json');
    await writeFile(file, serialiseSwim({ ...swim, id }), { flush: true });
    const handout = path.join(folder, 'handout.json');
    const kept = await readFile(handout, 'utf8').catch((error: NodeJS.ErrnoException) => {
      if (error.code === 'ENOENT') return null;
      throw error;
    });
    if (kept === null) return;
    const value = JSON.parse(kept) as Record<string, unknown>;
    await writeFile(handout, prettyJson({ ...value, swimId: id }), { flush: true });
  }

  /** The swim that makes room goes into the bin; one that lies there under the same id keeps its place. */
  private async intoBin(id: string): Promise<Result<Record<string, never>>> {
    const removed = await this.shelf.remove(id);
    if (removed.ok || removed.error.code !== 'already-there') return removed;
    await rename(this.shelf.folderOf(id), path.join(this.folder.bin, `${id}.${this.makeId()}`));
    return success({});
  }
}

/** Whether two swims hold the same marks, scene and card. */
function saysTheSame(a: Swim, b: Swim): boolean {
  const of = ({ card, scene, events, postures, followed, seen }: Swim): string =>
    JSON.stringify([card, scene, events, postures, followed, seen]);
  return of(a) === of(b);
}
