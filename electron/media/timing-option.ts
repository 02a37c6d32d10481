/**
 * How ffmpeg is told to pass pictures on as they are, none doubled or dropped; the option was renamed in 5.1, of 2022. A
 * snapshot between releases is told by its year.
 */
export function timingOption(version: string): readonly string[] {
  const year = /^N-\S+ of (\d{4})$/.exec(version)?.[1];
  const release = /^n?(\d+)\.(\d+)/.exec(version);
  const isOld =
    year !== undefined
      ? Number(year) < 2022
      : release !== null && Number(release[1]) * 100 + Number(release[2]) < 501;
  return isOld ? ['-vsync', 'passthrough'] : ['-fps_mode', 'passthrough'];
}
