import type { ScreenProps } from '../ui/screen-props';
import { TrialList } from './trial-list';
import { TrialPage } from './trial-page';
import '../card/card.css';
import '../shelf/shelf.css';
import '../sets/sets.css';
import '../sets/plan.css';
import './trials.css';

interface Props extends ScreenProps {
  /** None: all trials; else the trial's id. */
  readonly ids: readonly string[];
}

/** Where repeats under different conditions are compared. */
export function TrialsScreen({ ids, host, say, go }: Props) {
  const [id] = ids;
  if (id === undefined) return <TrialList host={host} say={say} go={go} />;
  return <TrialPage key={id} id={id} host={host} say={say} go={go} />;
}
