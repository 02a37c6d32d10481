import type { HostClient } from '../host/host-client';
import type { Say } from './notices';
import type { Route } from './use-route';

/** What every screen is given. */
export interface ScreenProps {
  readonly host: HostClient;
  readonly say: Say;
  readonly go: (route: Route) => void;
}
