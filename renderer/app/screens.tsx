import { lazy, type ReactNode, Suspense } from 'react';
import { BenchScreen } from '../bench/bench-screen';
import { LibraryScreen } from '../library/library-screen';
import { ChoosePair } from '../pair/choose-pair';
import { PairScreen } from '../pair/pair-screen';
import { SeasonScreen } from '../season/season-screen';
import { SetsScreen } from '../sets/sets-screen';
import { Shelf } from '../shelf/shelf';
import type { ShelfMemory } from '../shelf/shelf-memory';
import { TrialsScreen } from '../trials/trials-screen';
import { screenList, type ScreenName } from '../ui/screen-list';
import type { ScreenProps } from '../ui/screen-props';
import { type Route, shelfRoute } from '../ui/use-route';
import { appWords } from '#core/words/app';

/** What the app gives to what shows an address. */
interface Given extends ScreenProps {
  readonly memory: ShelfMemory;
}

/** What a screen shows for the ids of its address; null when they name nothing it can show. */
type Render = (ids: readonly string[], props: Given) => ReactNode;

// the letters and the PDF of the handout are large, and not wanted on the other screens
const HandoutScreen = lazy(async () => ({
  default: (await import('../handout/handout-screen')).HandoutScreen,
}));

const screens: Readonly<Record<ScreenName, Render>> = {
  shelf: (_ids, { host, memory, say, go }) => (
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
  bench: ([swimId], { host, say, go }) =>
    swimId ? <BenchScreen swimId={swimId} host={host} onLeave={() => go(shelfRoute)} say={say} /> : null,
  handout: ([swimId], { host, say, go }) =>
    swimId ? (
      <Suspense fallback={<output className="bench-opening">{appWords('openingHandout')}</output>}>
        <HandoutScreen key={swimId} swimId={swimId} host={host} say={say} go={go} />
      </Suspense>
    ) : null,
  pair: ([first, second], { host, say, go }) =>
    first && second ? (
      <PairScreen key={`${first} ${second}`} first={first} second={second} host={host} say={say} go={go} />
    ) : (
      <ChoosePair key={first ?? ''} first={first ?? null} host={host} go={go} />
    ),
  library: ([erase], { host, say, go }) => (
    <LibraryScreen host={host} say={say} go={go} erase={erase ?? null} />
  ),
  season: ([swimmerId], { host }) => <SeasonScreen host={host} swimmerId={swimmerId ?? null} />,
  trials: (ids, { host, say, go }) => <TrialsScreen ids={ids} host={host} say={say} go={go} />,
  sets: (ids, { host, say, go }) => <SetsScreen ids={ids} host={host} say={say} go={go} />,
};

/** What the address shows, or null when it leads nowhere. */
export function showRoute({ screen, ids }: Route, props: Given): ReactNode {
  const known = screenList.find(({ name }) => name === screen);
  return known ? screens[known.name](ids, props) : null;
}
