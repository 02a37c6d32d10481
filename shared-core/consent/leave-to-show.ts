import type { Swimmer } from '../swim-file/squad-schema';
import type { SwimCard } from '../swim-file/swim-schema';
import { consentWords } from '../words/consent';

/** What must be asked before a picture of a swimmer leaves the library. */
export type LeaveToShow =
  | { readonly kind: 'recorded' }
  /** Names of those without recorded consent, each once; "this swimmer" where nobody is named. */
  | { readonly kind: 'ask'; readonly names: readonly string[] };

/**
 * Whether pictures of these swims may be exported without asking: when each shows an invented swim, or a swimmer whose
 * written consent is recorded. Every export of pictures asks this one.
 */
export function leaveToShow(
  shown: readonly {
    readonly card: Pick<SwimCard, 'invented' | 'swimmerName'>;
    readonly swimmer: Pick<Swimmer, 'consent' | 'invented'> | null;
  }[],
): LeaveToShow {
  const names = shown
    .filter(
      ({ card, swimmer }) => !card.invented && !swimmer?.invented && (swimmer?.consent ?? null) === null,
    )
    .map(({ card }) => card.swimmerName || consentWords('swimmer'));
  return names.length === 0 ? { kind: 'recorded' } : { kind: 'ask', names: [...new Set(names)] };
}

/** "Rowan", "Rowan and Pip": who, in the middle of a sentence. */
export function namesInWords(names: readonly string[]): string {
  return names.length < 2
    ? (names[0] ?? '')
    : consentWords('and', { names: names.slice(0, -1).join(', '), names2: String(names.at(-1)) });
}
