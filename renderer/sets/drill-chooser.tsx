import { useState } from 'react';
import type { Drill } from '#core/practice/drill-schema';
import { Dialog } from '../ui/dialog';
import { DrillFacts } from './drill-facts';
import { setsWords } from '#core/words/sets';

interface Props {
  readonly drills: readonly Drill[];
  readonly onChoose: (drill: Drill) => void;
  readonly onCancel: () => void;
}

/** Chooses a drill for the card, with all it says beside it. */
export function DrillChooser({ drills, onChoose, onCancel }: Props) {
  const [id, setId] = useState(drills[0]?.id ?? '');
  const drill = drills.find((each) => each.id === id) ?? null;
  return (
    <Dialog title={setsWords('addDrill')} wide onCancel={onCancel}>
      <form
        onSubmit={(event) => {
          event.preventDefault();
          if (drill) onChoose(drill);
        }}
      >
        <div className="drill-chooser">
          <label>
            {setsWords('drill')}
            <select
              size={12}
              data-first-focus
              value={id}
              onChange={(event) => setId(event.target.value)}
              onDoubleClick={() => drill && onChoose(drill)}
            >
              {drills.map((each) => (
                <option key={each.id} value={each.id}>
                  {each.name}
                </option>
              ))}
            </select>
          </label>
          {drill && <DrillFacts drill={drill} />}
        </div>
        <footer className="dialog-foot">
          <button type="submit" className="primary" disabled={!drill}>
            {setsWords('putCard')}
          </button>
          <button type="button" onClick={onCancel}>
            {setsWords('leave')}
          </button>
        </footer>
      </form>
    </Dialog>
  );
}
