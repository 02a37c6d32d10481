import type { FrameRange } from '#core/timeline/frame-range';
import type { Focus } from '../media/copy-pieces';

/** A working copy under way: what can be shown of it already, and where the coach looks. */
export class CopyInMaking implements Focus {
  private readonly made: FrameRange[] = [];
  private readonly hearers = new Set<() => void>();

  constructor(
    readonly jobId: string,
    /** What its files are called while it is made. */
    private readonly name: string,
    private looksAt: number,
  ) {}

  get draft(): string {
    return `${this.name}.part`;
  }
  /** Folder of its pieces. */
  get folder(): string {
    return `${this.name}.pieces.part`;
  }
  get pieces(): readonly FrameRange[] {
    return this.made;
  }

  /** A piece was made; null: they are there no more. */
  add(piece: FrameRange | null): void {
    if (piece) this.made.push(piece);
    else this.made.length = 0;
  }

  lookAt(frame: number): void {
    if (frame === this.looksAt) return;
    this.looksAt = frame;
    for (const hear of this.hearers) hear();
  }

  frame(): number {
    return this.looksAt;
  }

  onMove(hear: () => void): () => void {
    this.hearers.add(hear);
    return () => this.hearers.delete(hear);
  }
}
