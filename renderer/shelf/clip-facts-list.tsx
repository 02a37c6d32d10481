import type { ClipFacts } from '../video/frame-source';
import type { PicturesChecked } from '#core/host-contract/operations/media-operations';
import { codecWords } from '#core/timeline/codec-words';
import { damageWords } from '#core/timeline/damage-words';
import { isStill } from '../video/is-still';
import { bytesWords, lengthWords, rateWords } from '../swims/fact-words';

interface Props {
  readonly facts: ClipFacts;
  readonly bytes: number;
  /** Playback seconds per real second; null while it isn't known. */
  readonly slowdown: number | null;
  /** Address of a picture of the clip, or null until there is one. */
  readonly picture: string | null;
  /** What a check of every picture found, or the share of the film it has seen; null where there is none. */
  readonly check?: PicturesChecked | number | null;
}

/** What the file itself tells, so that the coach sees it is the right one. */
export function ClipFactsList({ facts, bytes, slowdown, picture, check = null }: Props) {
  const rows: readonly (readonly [string, string])[] = [
    [
      'Picture',
      `${facts.width} × ${facts.height}${facts.rotation === 0 ? '' : `, turned ${facts.rotation}° as filmed`}`,
    ],
    ...(isStill(facts)
      ? [['Frames', '1: a still picture'] as const]
      : [
          ['Frames', facts.table.starts.length.toLocaleString()] as const,
          ['Length', lengthWords(facts.table, slowdown)] as const,
          ['Rate', rateWords(facts)] as const,
        ]),
    ['File', `${codecWords(facts.codec)} in ${facts.container}, ${bytesWords(bytes)}`],
    ...((facts.lostPictures ?? 0) > 0
      ? [
          [
            'Lost',
            `about ${facts.lostPictures} pictures are missing: the file breaks off or is damaged. What is there can be added`,
          ] as const,
        ]
      : []),
    ...(check === null ? [] : [['Checked', checkWords(check)] as const]),
  ];
  return (
    <div className="clip-facts">
      <div className="clip-facts-picture">{picture && <img src={picture} alt="Middle of the clip" />}</div>
      <dl>
        {rows.map(([what, words]) => (
          <div key={what}>
            <dt>{what}</dt>
            <dd>{words}</dd>
          </div>
        ))}
      </dl>
    </div>
  );
}

function checkWords(check: PicturesChecked | number): string {
  if (typeof check === 'number') return `looking at every picture, ${Math.round(check * 100)} %`;
  const damage = damageWords(check);
  if (damage === null) return 'every picture can be decoded';
  return `${damage}; pictures after them may show traces. The rest can be used`;
}
