/** Reads bits and Exp-Golomb codes as video parameter sets are written; past the end it reads zeros. */
export class BitReader {
  /** How many bits have been read. */
  at = 0;
  constructor(private readonly bytes: Uint8Array) {}
  get atEnd(): boolean {
    return this.at >= this.bytes.length * 8;
  }
  read(count: number): number {
    let value = 0;
    for (let n = 0; n < count; n++, this.at++)
      value = value * 2 + (((this.bytes[this.at >> 3] ?? 0) >> (7 - (this.at & 7))) & 1);
    return value;
  }
  /** Exp-Golomb code (ITU-T H.264, 9.1), unsigned. */
  golomb(): number {
    let zeros = 0;
    while (zeros < 32 && !this.atEnd && this.read(1) === 0) zeros += 1;
    return 2 ** zeros - 1 + this.read(zeros);
  }
  /** The same with a sign (9.1.1). */
  signedGolomb(): number {
    const code = this.golomb();
    return code % 2 === 1 ? (code + 1) / 2 : -code / 2;
  }
}
