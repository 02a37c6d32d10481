import { createReadStream } from 'node:fs';
import { copyFile, rename, rm, stat } from 'node:fs/promises';
import path from 'node:path';
import { Readable } from 'node:stream';
import { failure, type Result, success } from '#core/host-contract/host-error';
import type { ArrivedClip } from '#core/host-contract/operations/clip-operations';
import type { Clip } from '#core/swim-file/swim-schema';
import { plainName } from '../disk/contained-path';
import { draftName } from '../disk/drafts';
import { fileFailure } from '../disk/file-errors';
import { fingerprintOf } from './fingerprint';
import type { JobReport } from './jobs';
import type { LibraryFolder } from './library-folder';
import { receiveBody } from '../disk/receive-body';
import { hostJobsWords } from '#core/words/host-jobs';

interface Arrived {
  readonly clip: ArrivedClip;
  readonly file: string;
  readonly owned: boolean;
}

interface Settled {
  readonly clip: Pick<Clip, 'place' | 'fingerprint'>;
  /** Makes the clip wait again, when no swim could be made of it. */
  giveBack(): Promise<void>;
}

/** Clips that are in hand but in no swim yet: sent by the window, or lying where the coach said. */
export class ArrivedClips {
  private readonly arrived = new Map<string, Arrived>();
  private readonly arriving = new Map<string, { bytes: number; readonly stop: AbortController }>();

  constructor(
    private readonly folder: LibraryFolder,
    private readonly makeId: () => string,
  ) {}

  /** How many bytes of a clip being sent under a name of the sender's have arrived. */
  bytesOf(arrivalId: string): number | null {
    return this.arriving.get(arrivalId)?.bytes ?? null;
  }

  stopArriving(arrivalId: string): void {
    this.arriving.get(arrivalId)?.stop.abort();
  }

  async arrive(
    name: string,
    body: ReadableStream<Uint8Array> | null,
    arrivalId: string = this.makeId(),
  ): Promise<Result<ArrivedClip>> {
    if (!body) return failure('empty-file', { name });
    const clipId = this.makeId();
    const file = path.join(this.folder.arriving, draftName(clipId, ''));
    const coming = { bytes: 0, stop: new AbortController() };
    this.arriving.set(arrivalId, coming);
    try {
      const received = await receiveBody(body, file, {
        name,
        signal: coming.stop.signal,
        onBytes: (bytes) => {
          coming.bytes += bytes;
        },
      });
      if (!received.ok) return received;
      const fingerprint = await fingerprintOf(file);
      if (fingerprint.bytes === 0) {
        await rm(file, { force: true });
        return failure('empty-file', { name });
      }
      return this.keep({ clipId, name: plainName(name), fingerprint }, file, true);
    } catch (error) {
      await rm(file, { force: true });
      return fileFailure(error, name, 'writing');
    } finally {
      this.arriving.delete(arrivalId);
    }
  }

  /** Copies a referred clip into the library; it keeps its id. On a failure it is as it was. */
  async copyIn(clipId: string, signal: AbortSignal, report: JobReport): Promise<Result<ArrivedClip>> {
    const found = this.arrived.get(clipId);
    if (!found) return failure('not-found', { name: clipId });
    if (found.owned) return success(found.clip);
    const file = path.join(this.folder.arriving, draftName(this.makeId(), ''));
    const { name, fingerprint } = found.clip;
    let done = 0;
    try {
      const from = Readable.toWeb(createReadStream(found.file)) as ReadableStream<Uint8Array>;
      const received = await receiveBody(from, file, {
        name,
        signal,
        onBytes: (bytes) => {
          done += bytes;
          report(done / Math.max(1, fingerprint.bytes), hostJobsWords('copyingIntoLibrary'));
        },
      });
      if (!received.ok) return received;
      const copied = await fingerprintOf(file);
      if (copied.bytes !== fingerprint.bytes || copied.edgesSha256 !== fingerprint.edgesSha256) {
        await rm(file, { force: true });
        return failure('clip-changed', { name });
      }
      return this.keep(found.clip, file, true);
    } catch (error) {
      await rm(file, { force: true });
      return fileFailure(error, name, 'writing');
    }
  }

  async refer(file: string): Promise<Result<ArrivedClip>> {
    const name = path.basename(file);
    if (!path.isAbsolute(file) || file.includes('\0')) return failure('not-allowed', { name: file });
    try {
      if (!(await stat(file)).isFile()) return failure('not-a-video', { name });
      const fingerprint = await fingerprintOf(file);
      if (fingerprint.bytes === 0) return failure('empty-file', { name });
      return this.keep({ clipId: this.makeId(), name, fingerprint }, file, false);
    } catch (error) {
      return fileFailure(error, name, 'reading');
    }
  }

  private keep(clip: ArrivedClip, file: string, owned: boolean): Result<ArrivedClip> {
    this.arrived.set(clip.clipId, { clip, file, owned });
    return success(clip);
  }

  fileOf(clipId: string): string | null {
    return this.arrived.get(clipId)?.file ?? null;
  }

  /** Takes a clip into a swim's folder (moved) or leaves it outside (referred); the caller made the folder. */
  async settle(clipId: string, into: string): Promise<Result<Settled>> {
    const found = this.arrived.get(clipId);
    if (!found) return failure('not-found', { name: clipId });
    const { clip, file, owned } = found;
    if (!owned) {
      this.arrived.delete(clipId);
      return success({
        clip: { place: { kind: 'outside', path: file }, fingerprint: clip.fingerprint },
        giveBack: async () => {
          this.arrived.set(clipId, found);
        },
      });
    }
    const name = clip.name === 'swim.json' || clip.name === 'thumb.jpg' ? `clip-${clip.name}` : clip.name;
    const target = path.join(into, name);
    try {
      await rename(file, target).catch(async (error: NodeJS.ErrnoException) => {
        if (error.code !== 'EXDEV') throw error;
        await copyFile(file, target);
        await rm(file);
      });
    } catch (error) {
      return fileFailure(error, clip.name, 'writing');
    }
    this.arrived.delete(clipId);
    return success({
      clip: { place: { kind: 'inside', name }, fingerprint: clip.fingerprint },
      giveBack: async () => {
        await rename(target, file);
        this.arrived.set(clipId, found);
      },
    });
  }

  async discard(clipId: string): Promise<Result<Record<string, never>>> {
    const found = this.arrived.get(clipId);
    this.arrived.delete(clipId);
    if (found?.owned) await rm(found.file, { force: true });
    return success({});
  }
}
