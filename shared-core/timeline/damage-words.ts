/** What a check of the whole film found, in a coach's words; null when every picture is whole. */
export function damageWords({
  patched,
  missing,
}: Readonly<Record<'patched' | 'missing', number>>): string | null {
  const pictures = (count: number): string => (count === 1 ? '1 picture' : `${count} pictures`);
  const said = [
    ...(patched > 0 ? [`${pictures(patched)} ${patched === 1 ? 'is' : 'are'} broken`] : []),
    ...(missing > 0 ? [`${pictures(missing)} can’t be decoded`] : []),
  ];
  return said.length === 0 ? null : said.join(', ');
}
