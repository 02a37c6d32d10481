/** One kind of thing that `npm run -s export -- <kind> …` makes. A new kind is one of these in the table. */
export interface ExportCommand {
  readonly name: string;
  /** What it makes, in a few words. */
  readonly about: string;
  /** Arguments after the kind, as the usage prints them. */
  readonly usage: string;
  /** Flags with a value (`--out FOLDER`) and without (`--json`), beside those every kind has. */
  readonly valueFlags: readonly string[];
  readonly plainFlags: readonly string[];
  run(asked: AskedExport): Promise<void>;
}

/** What was asked on the command line, checked against the kind's flags. */
export interface AskedExport {
  /** What is no flag, in order: mostly one swim's folder. */
  readonly targets: readonly string[];
  value(flag: string): string | null;
  has(flag: string): boolean;
  /** Ends the command with 2 and the usage. */
  wrong(): never;
}

/** Flags of every kind: where to, whether to write over, and that consent is held though not recorded. */
export const everyValueFlags: readonly string[] = ['--out'];
export const everyPlainFlags: readonly string[] = ['--replace', '--consent-held'];

/** The one swim that was asked for; anything else is a wrong call. */
export function oneTarget(asked: AskedExport): string {
  const [target, ...rest] = asked.targets;
  return target === undefined || rest.length > 0 ? asked.wrong() : target;
}
