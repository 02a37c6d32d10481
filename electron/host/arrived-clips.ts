import { createWriteStream } from 'node:fs';
import { copyFile, rename, rm, stat } from 'node:fs/promises';
import path from 'node:path';
import { Readable } from 'node:stream';
import { pipeline } from 'node:stream/promises';
import type { ReadableStream as NodeReadableStream } from 'node:stream/web';
import { failure, type Result, success } from '#core/host-contract/host-error';
import type { ArrivedClip } from '#core/host-contract/operations/clip-operations';
import type { Clip } from '#core/swim-file/swim-schema';
import { plainName } from './contained-path';
import { draftName } from './drafts';
import { fileFailure } from './file-errors';
import { fingerprintOf } from './fingerprint';
import type { LibraryFolder } from './library-folder';

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

  constructor(
    private readonly folder: LibraryFolder,
    private readonly makeId: () => string,
  ) {}

  async arrive(name: string, body: ReadableStream<Uint8Array> | null): Promise<Result<ArrivedClip>> {
    const clipId = this.makeId();
    const file = path.join(this.folder.arriving, draftName(clipId, ''));
    try {
      if (!body) return failure('empty-file', { name });
      await pipeline(
        Readable.fromWeb(body as NodeReadableStream<Uint8Array>),
        createWriteStream(file, { flags: 'wx' }),
      );
      const fingerprint = await fingerprintOf(file);
      if (fingerprint.bytes === 0) {
        await rm(file, { force: true });
        return failure('empty-file', { name });
      }
      return this.keep({ clipId, name: plainName(name), fingerprint }, file, true);
    } catch (error) {
      await rm(file, { force: true });
      if (error instanceof Error && (error.name === 'AbortError' || 'code' in error === false))
        return failure('cancelled', { name });
      const code = (error as NodeJS.ErrnoException).code ?? '';
      if (code === 'ERR_STREAM_PREMATURE_CLOSE' || code === 'ECONNRESET' || code === 'ABORT_ERR')
        return failure('cancelled', { name });
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
