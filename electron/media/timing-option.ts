/** How ffmpeg is told to pass pictures on as they are, none doubled or dropped; the option was renamed in 5.1. */
export function timingOption(version: string): readonly string[] {
  const found = /^[nN]?-?(\d+)\.(\d+)/.exec(version);
  const isOld = found !== null && Number(found[1]) * 100 + Number(found[2]) < 501;
  return isOld ? ['-vsync', 'passthrough'] : ['-fps_mode', 'passthrough'];
}
