import type { ClipFacts } from '../video/frame-source';
import { bytesWords, codecWords, lengthWords, rateWords } from './fact-words';

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
    ['Frames', facts.table.starts.length.toLocaleString()],
    ['Length', lengthWords(facts.table, slowdown)],
    ['Rate', rateWords(facts)],
    ['File', `${codecWords(facts.codec)} in ${facts.container}, ${bytesWords(bytes)}`],
    ...((facts.lostPictures ?? 0) > 0
      ? [
          [
            'Lost',
            `${facts.lostPictures} pictures can’t be shown: the file is damaged or begins in mid-group`,
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
