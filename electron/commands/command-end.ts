/** How a command ends without having done its work: the exit code, and why in one sentence. */
export class CommandEnd extends Error {
  constructor(
    /** 1: it could not be done; 2: it was asked wrongly. */
    readonly code: 1 | 2,
    words: string,
  ) {
    super(words);
  }
}

/** Ends the command with 1 or 2 and one sentence on standard error. */
export function stop(code: 1 | 2, words: string): never {
  throw new CommandEnd(code, words);
}

/**
 * Runs a command's work; an expected end is said in words, a bug keeps its trace. Whoever reads what it writes may stop
 * reading (`| head`): then there is nothing left to do.
 */
export async function runCommand(work: () => Promise<void>): Promise<void> {
  for (const stream of [process.stdout, process.stderr])
    stream.on('error', (error: NodeJS.ErrnoException) => {
      if (error.code !== 'EPIPE') throw error;
      process.exit(0);
    });
  try {
    await work();
  } catch (error) {
    if (!(error instanceof CommandEnd)) throw error;
    console.error(error.message);
    process.exitCode = error.code;
  }
}
