import type { Swimmer } from '#core/swim-file/squad-schema';
import { dayWords } from '#core/swim-file/card-words';

/** Whether there is leave to film and show this swimmer. The mark before the words says the same without colour. */
export function ConsentWords({ swimmer }: { readonly swimmer: Swimmer }) {
  if (swimmer.invented) return <>Invented swimmer: no consent needed.</>;
  if (swimmer.consent)
    return (
      <>
        <span aria-hidden="true">✓ </span>Written consent of {dayWords(swimmer.consent.givenOn)}
        {swimmer.consent.givenBy && `, given by ${swimmer.consent.givenBy}`}.
      </>
    );
  return (
    <>
      <span aria-hidden="true">○ </span>No written consent is recorded for {swimmer.name}.
    </>
  );
}
