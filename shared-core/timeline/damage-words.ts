/**
 * What a check of the whole film found, in a coach's words; null when every picture is whole. Of broken ones it is the least
 * number: decoders tell where they met errors, not which pictures lean on those.
 */
export function damageWords({
  patched,
  missing,
}: Readonly<Record<'patched' | 'missing', number>>): string | null {
  const pictures = (count: number): string => (count === 1 ? '1 picture' : `${count} pictures`);
  const said = [
    ...(patched > 0 ? [`at least ${pictures(patched)} ${patched === 1 ? 'is' : 'are'} broken`] : []),
    ...(missing > 0 ? [`${pictures(missing)} can’t be decoded`] : []),
  ];
  return said.length === 0 ? null : said.join(', ');
}
