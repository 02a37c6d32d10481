import { words } from './words';

/** Codecs, and what is damaged in a film. */
export const clipsWords = words({
  mpeg4Part2: 'MPEG-4 part 2',
  vvcH266: 'VVC (H.266)',
  av1DolbyVision: 'AV1 in Dolby Vision',
  dolbyVision: 'Dolby Vision',
  proresRaw: 'ProRes RAW',
  broken: 'at least {patched, plural, one {1 picture is broken} other {{patched} pictures are broken}}',
  cantDecoded: '{missing, plural, one {1 picture} other {{missing} pictures}} can’t be decoded',
});
