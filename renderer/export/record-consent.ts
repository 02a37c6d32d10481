import { type Result, success } from '#core/host-contract/host-error';
import type { Swimmer } from '#core/swim-file/squad-schema';
import type { OpenSwim } from '../open-swim/open-swim';
import { enrolSwimmer, writeSwimmer } from '../card/write-swimmer';
import { editCard } from '../open-swim/card-commands';
import { makeId } from '../host/make-id';

type Consent = Swimmer['consent'];

/** Tells every open swim of this swimmer what the squad now holds of them. */
function tell(sessions: readonly OpenSwim[], swimmer: Swimmer): void {
  for (const { document, squad, known } of sessions) {
    squad.setState(({ squad: old }) =>
      old
        ? {
            squad: {
              ...old,
              swimmers: [...old.swimmers.filter((each) => each.id !== swimmer.id), swimmer],
            },
          }
        : {},
    );
    if (document.swim().card.swimmerId === swimmer.id) known.setState({ swimmer });
  }
}

/**
 * Puts consent on record for the swimmer that the card of `session` names, or takes it off again (null). Somebody the
 * squad does not know yet is put into it, and the card then points there. All open swims of that swimmer know at once.
 */
export async function recordConsent(
  session: OpenSwim,
  sessions: readonly OpenSwim[],
  consent: Consent,
): Promise<Result<null>> {
  const { host, document, known } = session;
  const { swimmerName } = document.swim().card;
  let swimmer = known.getState().swimmer;
  if (!swimmer) {
    const enrolled = await enrolSwimmer(host, swimmerName, makeId);
    if (!enrolled.ok) return enrolled;
    swimmer = enrolled.value;
  }
  if (!swimmer) return success(null);
  const written = await writeSwimmer(host, swimmer.id, { consent });
  if (!written.ok) return written;
  for (const { document: own } of sessions) {
    const { card } = own.swim();
    if (card.swimmerId === null && card.swimmerName === swimmerName)
      own.run(editCard({ swimmerId: swimmer.id }));
  }
  tell(sessions, { ...swimmer, consent });
  return success(null);
}
