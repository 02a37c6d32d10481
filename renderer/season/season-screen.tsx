import { useState } from 'react';
import type { ScreenProps } from '../ui/screen-props';
import { addressOf } from '../ui/use-route';
import { isoDayOf } from '../card/remembered-card';
import { LibraryTrouble } from '../swims/library-messages';
import { PageBar } from '../ui/page-bar';
import { SquadPage } from './squad-page';
import { SwimmerPage } from './swimmer-page';
import { useSeasonData } from './use-season';
import '../shelf/shelf.css';
import './season.css';
import { seasonWords } from '#core/words/season';
import { rich } from '../ui/rich';

interface Props extends Pick<ScreenProps, 'host'> {
  /** Whose season; null: the squad. */
  readonly swimmerId: string | null;
}

/** How the season goes: the squad at a glance, or one swimmer reading by reading. */
export function SeasonScreen({ host, swimmerId }: Props) {
  const { data, trouble } = useSeasonData(host);
  const [today] = useState(() => isoDayOf(Date.now()));
  if (!data)
    return (
      <div className="season">
        <PageBar title={seasonWords('season')} />
        <main>
          {trouble ? (
            <LibraryTrouble trouble={trouble} onAgain={() => window.location.reload()} />
          ) : (
            <output className="shelf-opening">{seasonWords('openingSeason')}</output>
          )}
        </main>
      </div>
    );
  if (swimmerId === null) return <SquadPage host={host} data={data} today={today} />;
  const swimmer = data.squad.swimmers.find(({ id }) => id === swimmerId);
  if (swimmer) return <SwimmerPage key={swimmerId} host={host} data={data} swimmer={swimmer} today={today} />;
  return (
    <div className="season">
      <PageBar title={seasonWords('season')} />
      <main className="season-empty">
        <h2>{seasonWords('swimmerNotSquad')}</h2>
        <p>
          {rich(
            seasonWords.parts('theyMayHaveBeen', {
              a: (inside) => <a href={addressOf({ screen: 'season', ids: [] })}>{inside}</a>,
            }),
          )}
        </p>
      </main>
    </div>
  );
}
