import type { ClipFacts } from '../video/frame-source';
import { codecWords } from '#core/timeline/codec-words';
import { damageWords } from '#core/timeline/damage-words';
import { isStill } from '../video/is-still';
import type { FilmCheck } from './check-adding';
import { bytesWords, lengthWords, rateWords } from '../swims/fact-words';
import { shelfWords } from '#core/words/shelf';

interface Props {
  readonly facts: ClipFacts;
  readonly bytes: number;
  /** Playback seconds per real second; null while it isn't known. */
  readonly slowdown: number | null;
  /** Address of a picture of the clip, or null until there is one. */
  readonly picture: string | null;
  /** What a check of every picture found, or how far it is; null where there is none. */
  readonly check?: FilmCheck | null;
}

/** What the file itself tells, so that the coach sees it is the right one. */
export function ClipFactsList({ facts, bytes, slowdown, picture, check = null }: Props) {
  const rows: readonly (readonly [string, string])[] = [
    [
      shelfWords('picture'),
      `${facts.width} × ${facts.height}${facts.rotation === 0 ? '' : shelfWords('turnedFilmed', { rotation: facts.rotation })}`,
    ],
    ...(isStill(facts)
      ? [[shelfWords('frames'), shelfWords('n1StillPicture')] as const]
      : [
          [shelfWords('frames'), facts.table.starts.length.toLocaleString()] as const,
          [shelfWords('length'), lengthWords(facts.table, slowdown)] as const,
          [shelfWords('rate'), rateWords(facts)] as const,
        ]),
    [
      shelfWords('file'),
      shelfWords('in', {
        codec: codecWords(facts.codec),
        container: facts.container,
        bytes: bytesWords(bytes),
      }),
    ],
    ...((facts.lostPictures ?? 0) > 0
      ? [
          [
            shelfWords('lost'),
            shelfWords('aboutPicturesMissing', { lostPictures: String(facts.lostPictures) }),
          ] as const,
        ]
      : []),
    ...(check === null ? [] : [[shelfWords('checked'), checkWords(check)] as const]),
  ];
  return (
    <div className="clip-facts">
      <div className="clip-facts-picture">
        {picture && <img src={picture} alt={shelfWords('middleClip')} />}
      </div>
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

function checkWords(check: FilmCheck): string {
  if (check.kind === 'looking') return shelfWords('lookingAtEvery', { check: Math.round(check.share * 100) });
  const damage = damageWords(check.kind === 'tools' ? check : { patched: 0, missing: check.lost });
  if (damage === null) return shelfWords('everyPictureCan');
  return shelfWords(check.kind === 'tools' ? 'leaningPictures' : 'notInThisWindow', { damage });
}
