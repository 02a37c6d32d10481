import { useState } from 'react';
import { errorWords } from '#core/host-contract/error-words';
import type { HostError } from '#core/host-contract/host-error';
import type { Swimmer } from '#core/swim-file/squad-schema';
import { ConfirmDialog } from '../ui/confirm-dialog';
import { Dialog } from '../ui/dialog';
import type { HostClient } from '../host/host-client';
import { TargetsForm } from '../targets/targets-form';
import { ConsentForm } from '../card/consent-form';
import { writeSwimmer } from '../card/write-swimmer';
import { shelfWords } from '#core/words/shelf';

interface Props {
  readonly swimmer: Swimmer;
  /** Today, as a new consent is dated. */
  readonly today: string;
  readonly host: HostClient;
  readonly onClose: (changed: boolean) => void;
}

const withinOrNull = (value: number, low: number, high: number): number | null =>
  value >= low && value <= high ? value : null;

/** What is kept of a swimmer: leave to film, and the body measures some readings need. */
export function SwimmerDialog({ swimmer, today, host, onClose }: Props) {
  const [said, setSaid] = useState(swimmer);
  const [trouble, setTrouble] = useState<HostError | null>(null);
  const [asks, setAsks] = useState(false);
  const [busy, setBusy] = useState(false);
  const leave = (): void => {
    if (said === swimmer) onClose(false);
    else setAsks(true);
  };
  const keep = async (): Promise<void> => {
    setBusy(true);
    const { id, ...rest } = said;
    const written = await writeSwimmer(host, id, { ...rest, name: rest.name.trim() });
    setBusy(false);
    if (written.ok) onClose(true);
    else setTrouble(written.error);
  };
  return (
    <Dialog title={swimmer.name} onCancel={leave}>
      <form
        onSubmit={(event) => {
          event.preventDefault();
          void keep();
        }}
      >
        {trouble && (
          <p className="message message-trouble" role="alert">
            {errorWords(trouble).what} {errorWords(trouble).todo}
          </p>
        )}
        <div className="card-form card-form-two">
          <label>
            {shelfWords('name')}
            <input
              required
              pattern=".*\S.*"
              maxLength={120}
              value={said.name}
              onChange={(event) => setSaid({ ...said, name: event.target.value })}
            />
          </label>
          <label>
            {shelfWords('birthYear')}
            <input
              type="number"
              min="1900"
              max="2100"
              step="1"
              defaultValue={said.birthYear ?? ''}
              onChange={(event) =>
                setSaid({ ...said, birthYear: withinOrNull(event.target.valueAsNumber, 1900, 2100) })
              }
            />
          </label>
          <label>
            {shelfWords('streamlineLengthM')}
            <input
              type="number"
              min="0.5"
              max="5"
              step="0.01"
              defaultValue={said.streamlineMetres ?? ''}
              onChange={(event) =>
                setSaid({ ...said, streamlineMetres: withinOrNull(event.target.valueAsNumber, 0.5, 5) })
              }
            />
            <small>{shelfWords('fingertipToeArms')}</small>
          </label>
          <label>
            {shelfWords('tableBodySegments')}
            <select
              value={said.bodyTable ?? ''}
              onChange={(event) =>
                setSaid({ ...said, bodyTable: (event.target.value || null) as Swimmer['bodyTable'] })
              }
            >
              <option value="">{shelfWords('meanBoth')}</option>
              <option value="female">{shelfWords('womens')}</option>
              <option value="male">{shelfWords('mens')}</option>
            </select>
            <small>{shelfWords('centreMassMeasured')}</small>
          </label>
          <TargetsForm
            targets={said.targets}
            today={today}
            onChange={(targets) => setSaid({ ...said, targets })}
          />
          <ConsentForm
            consent={said.consent}
            today={today}
            onChange={(consent) => setSaid({ ...said, consent })}
          />
        </div>
        <footer className="dialog-foot">
          <button type="submit" className="primary" disabled={busy}>
            {shelfWords('keep')}
          </button>
          <button type="button" onClick={leave}>
            {shelfWords('leave')}
          </button>
        </footer>
      </form>
      {asks && (
        <ConfirmDialog
          title={shelfWords('leaveWithoutKeeping')}
          words={shelfWords('whatYouChanged', { name: swimmer.name })}
          yes={shelfWords('leave2')}
          no={shelfWords('go')}
          onAnswer={(yes) => {
            setAsks(false);
            if (yes) onClose(false);
          }}
        />
      )}
    </Dialog>
  );
}
