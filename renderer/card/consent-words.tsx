import type { Swimmer } from '#core/swim-file/squad-schema';
import { dayWords } from '#core/swim-file/card-words';
import { cardFormWords } from '#core/words/card-form';
import { rich } from '../ui/rich';

/** Whether there is leave to film and show this swimmer. The mark before the words says the same without colour. */
export function ConsentWords({ swimmer }: { readonly swimmer: Swimmer }) {
  if (swimmer.invented) return <>{cardFormWords('inventedSwimmerNo')}</>;
  if (swimmer.consent)
    return (
      <>
        {rich(
          cardFormWords.parts('writtenConsent', {
            day: dayWords(swimmer.consent.givenOn),
            span: (inside) => <span aria-hidden="true">{inside}</span>,
          }),
        )}
        {swimmer.consent.givenBy && cardFormWords('givenBy', { givenBy: swimmer.consent.givenBy })}.
      </>
    );
  return (
    <>
      {rich(
        cardFormWords.parts('noWrittenConsent', {
          name: swimmer.name,
          span: (inside) => <span aria-hidden="true">{inside}</span>,
        }),
      )}
    </>
  );
}
