import type { BenchSession } from '../bench/bench-session';

/** Names of the swimmers shown whose written consent is not recorded; each once, invented swims left out. */
export function withoutConsent(sessions: readonly BenchSession[]): readonly string[] {
  const names = sessions.flatMap(({ document, known }) => {
    const { card } = document.swim();
    const held = card.invented || (known.getState().swimmer?.consent ?? null) !== null;
    return held ? [] : [card.swimmerName || 'this swimmer'];
  });
  return [...new Set(names)];
}
