import type { ClipFacts } from '../video/frame-source';
import { codecWords } from '#core/timeline/codec-words';
import { isStill } from '../video/is-still';
import { bytesWords, lengthWords, rateWords } from '../swims/fact-words';

interface Props {
  readonly facts: ClipFacts;
  readonly bytes: number;
  /** Playback seconds per real second; null while it isn't known. */
  readonly slowdown: number | null;
  /** Address of a picture of the clip, or null until there is one. */
  readonly picture: string | null;
}

/** What the file itself tells, so that the coach sees it is the right one. */
export function ClipFactsList({ facts, bytes, slowdown, picture }: Props) {
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
