import type { TargetMark } from '#core/measures/target-mark';
import { readingsWords } from '#core/words/readings';

/** The three answers in words; "can’t tell" where the interval reaches across an end of the band. */
export const metWords = {
  yes: 'met',
  no: readingsWords('notMet'),
  unsure: readingsWords('cantTell'),
} as const;

/** Target met, missed or undecided: by shape and word, colour only repeats it. */
export function TargetDot({ mark }: { readonly mark: TargetMark | null }) {
  if (!mark) return <span className="target-dot" aria-hidden="true" />;
  return (
    <span className={`target-dot ${mark.met}`} title={mark.words}>
      <svg width="14" height="14" viewBox="-7 -7 14 14" aria-hidden="true">
        {mark.met === 'yes' && <circle r="5.5" fill="var(--met)" />}
        {mark.met === 'no' && <circle r="4.6" fill="none" stroke="var(--unmet)" strokeWidth="2.4" />}
        {mark.met === 'unsure' && (
          <circle r="4.8" fill="none" stroke="var(--quiet)" strokeWidth="2" strokeDasharray="3 2.4" />
        )}
      </svg>
      <span className="hearable">
        {metWords[mark.met]}: {mark.words}
      </span>
    </span>
  );
}
