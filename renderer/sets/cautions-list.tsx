import { type CautionCode, cautions } from '#core/practice/caution';
import { setsWords } from '#core/words/sets';

/** Cautions where the work is planned, each with where it comes from. */
export function CautionsList({ codes }: { readonly codes: readonly CautionCode[] }) {
  if (codes.length === 0) return null;
  return (
    <ul className="cautions" aria-label={setsWords('cautions')}>
      {codes.map((code) => (
        <li key={code} title={cautions[code].source}>
          {cautions[code].words}
        </li>
      ))}
    </ul>
  );
}
