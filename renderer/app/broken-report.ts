import { appWords } from '#core/words/app';

export interface ReportGiven {
  readonly error: unknown;
  /** Name of the screen, without what it shows. */
  readonly screen: string;
  readonly agent: string;
}

/** Errors made by the language itself, whose words the engine chose; the words of any other may hold what was typed. */
const own = new Set(['TypeError', 'RangeError', 'ReferenceError', 'SyntaxError', 'InvalidStateError']);

/**
 * What a report about a bug may hold: which error, where in Submark's own program, on which screen and system. No names, no
 * ids, no paths of the computer, no address with its key: quoted words are left out, places are files and lines only.
 */
export function brokenReport({ error, screen, agent }: ReportGiven): string {
  const name = error instanceof Error ? error.name : typeof error;
  const words = error instanceof Error && own.has(error.name) ? `: ${withoutQuotes(error.message)}` : '';
  const stack = error instanceof Error ? (error.stack ?? '') : '';
  return [
    appWords('submarkScreen', { screen: /^[a-z]+$/.test(screen) ? screen : 'unknown' }),
    `${/^\w{1,60}$/.test(name) ? name : appWords('error')}${words}`,
    ...placesOf(stack).map((place) => `  ${appWords('at', { place })}`),
    agent.slice(0, 200),
  ].join('\n');
}

/** Anything between quotes, and everything after a colon that the engine puts before what it was given. */
const withoutQuotes = (message: string): string =>
  message.replaceAll(/(["'`“])[\s\S]*?(["'`”]|$)/g, '…').slice(0, 160);

/** File names and lines of a stack: `assets/index-abc.js:12:34`, without what comes before them. */
function placesOf(stack: string): readonly string[] {
  return stack
    .split('\n')
    .flatMap(
      (line) => /([\w.-]+\.(?:js|ts|tsx))(?:\?[^:]*)?:(\d+):(\d+)/.exec(line)?.slice(1, 4).join(':') ?? [],
    )
    .slice(0, 12);
}
