import type { ScreenProps } from '../ui/screen-props';
import { Deck } from './deck';
import { DrillsPage } from './drills-page';
import { PracticeList } from './practice-list';
import { PracticePage } from './practice-page';
import { PracticePlan } from './practice-plan';
import '../card/card.css';
import '../shelf/shelf.css';
import './sets.css';
import './plan.css';
import './totals.css';
import './drills.css';
import './deck.css';

interface Props extends ScreenProps {
  /** None: all practices. A practice's id: its plan; with `deck` after it, its log. `drills`: the drill library. */
  readonly ids: readonly string[];
}

/** Where practice is planned and logged. */
export function SetsScreen({ ids, host, say, go }: Props) {
  const [first, second] = ids;
  if (first === undefined) return <PracticeList host={host} say={say} go={go} />;
  if (first === 'drills') return <DrillsPage host={host} say={say} go={go} />;
  return (
    <PracticePage key={first} id={first} host={host} say={say} go={go}>
      {(page) => (second === 'deck' ? <Deck {...page} /> : <PracticePlan {...page} />)}
    </PracticePage>
  );
}
