/** Bytes at the end of a film in which a camera's own XML is looked for; it has a few kilobytes (our default is generous). */
export const cameraXmlWithin = 64 * 1024;

/** Rates a camera's XML tells of its film, pictures a second. */
export interface CameraXmlRates {
  readonly captured: number;
  readonly stored: number;
}

/**
 * The rates in the `NonRealTimeMeta` XML that XAVC cameras write into the last box of an MP4 (and beside it as a file), from
 * the last `cameraXmlWithin` bytes of the film read as Latin-1; null where there is none or it does not tell both. Its `VideoFrame` element
 * names them: `captureFps="959.04p" formatFps="23.98p"` under `RecordingMode type="slowAndQuickMotion"`, in a published
 * file of a camera set to 960 a second. No open specification was found: this rests on such files (schema
 * `urn:schemas-professionalDisc:nonRealTimeMeta`), and on open-source readers that find the XML in a box named `xml `.
 */
export function cameraXmlRates(end: string): CameraXmlRates | null {
  const from = end.lastIndexOf('<NonRealTimeMeta');
  if (from < 0) return null;
  const frame = /<(?:\w+:)?VideoFrame\b[^>]*>/.exec(end.slice(from))?.[0] ?? '';
  const rate = (name: string): number =>
    Number(new RegExp(`\\b${name}="(\\d+(?:\\.\\d+)?)[pi]?"`).exec(frame)?.[1] ?? Number.NaN);
  const [captured, stored] = [rate('captureFps'), rate('formatFps')];
  return captured > 0 && stored > 0 ? { captured, stored } : null;
}
