import { useCallback, useSyncExternalStore } from 'react';

export type Route = { readonly screen: 'shelf' } | { readonly screen: 'bench'; readonly swimId: string };

const listen = (changed: () => void): (() => void) => {
  window.addEventListener('hashchange', changed);
  return () => window.removeEventListener('hashchange', changed);
};
const hash = (): string => window.location.hash;

function routeOf(text: string): Route {
  const swimId = /^#\/bench\/([A-Za-z0-9_-]{1,64})$/.exec(text)?.[1];
  return swimId ? { screen: 'bench', swimId } : { screen: 'shelf' };
}

/** Where the coach is, kept in the address so that reload and back do what they should. */
export function useRoute(): readonly [Route, (route: Route) => void] {
  const text = useSyncExternalStore(listen, hash);
  const go = useCallback((route: Route) => {
    window.location.hash = route.screen === 'bench' ? `#/bench/${route.swimId}` : '#/';
  }, []);
  return [routeOf(text), go];
}
