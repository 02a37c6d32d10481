import { useMemo, useSyncExternalStore } from 'react';

/** Which screen, and the ids it is about: `#/pair/a/b` is the pair of swims a and b. */
export interface Route {
  readonly screen: string;
  readonly ids: readonly string[];
}

export const shelfRoute: Route = { screen: 'shelf', ids: [] };

const listen = (changed: () => void): (() => void) => {
  window.addEventListener('hashchange', changed);
  return () => window.removeEventListener('hashchange', changed);
};
const hash = (): string => window.location.hash;

/** The route an address names; the shelf for one that is empty or malformed. */
export function routeOf(text: string): Route {
  const [screen, ...ids] =
    /^#\/([A-Za-z0-9_-]{1,64}(?:\/[A-Za-z0-9_-]{1,64}){0,3})$/.exec(text)?.[1]?.split('/') ?? [];
  return screen ? { screen, ids } : shelfRoute;
}

export function addressOf({ screen, ids }: Route): string {
  return screen === 'shelf' ? '#/' : `#/${[screen, ...ids].join('/')}`;
}

/** Leads to another screen. */
export function openRoute(route: Route): void {
  window.location.hash = addressOf(route);
}

/** Where the coach is, kept in the address so that reload and back do what they should. */
export function useRoute(): readonly [Route, (route: Route) => void] {
  const text = useSyncExternalStore(listen, hash);
  return [useMemo(() => routeOf(text), [text]), openRoute];
}
