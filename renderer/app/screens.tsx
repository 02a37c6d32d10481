import type { ReactNode } from 'react';
import { BenchScreen } from '../bench/bench-screen';
import type { HostClient } from '../host/host-client';
import { Shelf } from '../shelf/shelf';
import type { ShelfMemory } from '../shelf/shelf-memory';
import type { Say } from './notices';
import { type Route, shelfRoute } from './use-route';

/** What every screen is given. */
export interface ScreenProps {
  readonly host: HostClient;
  readonly say: Say;
  readonly go: (route: Route) => void;
  readonly memory: ShelfMemory;
}

export interface Screen {
  /** First part of its address, `#/name/…`. */
  readonly name: string;
  /** As in the menu and in "Go to …"; sentence case. */
  readonly label: string;
  /** Listed in the menu, with the key that leads there from any screen; null: reached from another screen only. */
  readonly menuKey: string | null;
  /** Null when the ids do not name anything this screen can show. */
  readonly render: (ids: readonly string[], props: ScreenProps) => ReactNode;
}

/** Every screen, in the order of the menu. */
export const screens: readonly Screen[] = [
  {
    name: 'shelf',
    label: 'Shelf',
    menuKey: 'Shift+Digit1',
    render: (_ids, { host, memory, say, go }) => (
      <Shelf
        host={host}
        memory={memory}
        say={say}
        onOpen={(swimId) => {
          memory.setState({ swimId });
          go({ screen: 'bench', ids: [swimId] });
        }}
      />
    ),
  },
  {
    name: 'bench',
    label: 'Bench',
    menuKey: null,
    render: ([swimId], { host, say, go }) =>
      swimId ? <BenchScreen swimId={swimId} host={host} onLeave={() => go(shelfRoute)} say={say} /> : null,
  },
];
