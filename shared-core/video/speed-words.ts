import { videoPageWords } from '../words/video-page';

/** Common shares of true speed as people write them. */
const shares: Readonly<Record<string, string>> = {
  '2': '½',
  '3': '⅓',
  '4': '¼',
  '5': '⅕',
  '6': '⅙',
  '8': '⅛',
  '10': '⅒',
};

/** How a video's speed is written in its picture: "true speed", "slow motion, ¼ of true speed". */
export function speedWords(slow: number): string {
  if (slow === 1) return videoPageWords('trueSpeed');
  const share = shares[String(slow)];
  if (share) return videoPageWords('slowMotionTrue', { share });
  const times = Number(slow.toPrecision(3));
  return slow > 1
    ? videoPageWords('slowMotionSlowed', { times })
    : videoPageWords('trueSpeedSlow', { slow: Number((1 / slow).toPrecision(3)) });
}
