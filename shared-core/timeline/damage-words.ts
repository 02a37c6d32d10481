import { clipsWords } from '../words/clips';

/**
 * What a check of the whole film found, in a coach's words; null when every picture is whole. Of broken ones it is the least
 * number: decoders tell where they met errors, not which pictures lean on those.
 */
export function damageWords({
  patched,
  missing,
}: Readonly<Record<'patched' | 'missing', number>>): string | null {
  const said = [
    ...(patched > 0 ? [clipsWords('broken', { patched })] : []),
    ...(missing > 0 ? [clipsWords('cantDecoded', { missing })] : []),
  ];
  return said.length === 0 ? null : said.join(', ');
}
