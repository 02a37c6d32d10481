import type { CameraXmlRates } from './camera-xml';

/** Stored at this rate or quicker, film is what Apple calls high-frame-rate (see below). */
const appleHighRate = 100;

/**
 * Slowdown told by a file's tags: capture rate over stored rate, ≥ 1. Null where nothing readable is told, or where the
 * stored rate already is the tagged capture rate within 2 % (our default: 29.97 against a tagged 30 is no slow motion).
 *
 * `tags` are a container's raw metadata by key. Read are:
 * - `com.android.capture.fps` (Android camera framework, MediaRecorder "capture rate": a 32-bit float, or text);
 * - `com.apple.quicktime.full-frame-rate-playback-intent`: says of film of 120 pictures a second or more whether a player
 *   should show it at its full rate (1) or slowed (0). Either way the file's own times are those of filming, and slowing is
 *   the player's: 1. (Apple, AVFoundation, `AVMetadataKey.quickTimeMetadataKeyFullFrameRatePlaybackIntent`.) Only on film
 *   stored at 100 a second or more, as the key stands on film of 30 a second too; film that was slowed when it was sent
 *   or edited is not stored so quickly, and there the coach is asked.
 *
 * `com.apple.quicktime.camera.framereadouttimeinmicroseconds` is deliberately not read: it tells the sensor's readout, not
 * the rate.
 */
export function slowdownFromTags(tags: Readonly<Record<string, unknown>>, storedRate: number): number | null {
  if (!(storedRate > 0)) return null;
  const captured = numberOf(tags['com.android.capture.fps']);
  if (captured !== null) return slowdownFromRate(captured, storedRate);
  const keepsTime = storedRate >= appleHighRate && storedRate <= filmedRates.most;
  return keepsTime && 'com.apple.quicktime.full-frame-rate-playback-intent' in tags ? 1 : null;
}

/**
 * The same as told by a camera's own XML (see `cameraXmlRates`). Null as well where the film is not stored at the rate the
 * XML names: it was made anew since, and the XML is of another film.
 */
export function slowdownFromCameraXml(rates: CameraXmlRates | null, storedRate: number): number | null {
  if (!rates || !(storedRate > 0) || Math.abs(rates.stored / storedRate - 1) > sameRate) return null;
  return slowdownFromRate(rates.captured, storedRate);
}

/** Slowdown of film of a capture rate stored at another: above 1, or null where it is none or beyond belief. */
export function slowdownFromRate(captured: number, storedRate: number): number | null {
  const slowdown = (usable(captured) ?? Number.NaN) / storedRate;
  return slowdown > 1 + sameRate && slowdown < Number.POSITIVE_INFINITY ? slowdown : null;
}

/** Rates film can have been taken at, pictures a second: from time lapse to the quickest cameras (our default). */
export const filmedRates = { least: 1, most: 100_000 } as const;

/** Rates nearer than this are the same (our default: 29.97 against a tagged 30 is no slow motion). */
const sameRate = 0.02;

function numberOf(tag: unknown): number | null {
  if (typeof tag === 'number') return usable(tag);
  if (typeof tag === 'string') return usable(Number(tag));
  if (tag instanceof Uint8Array && tag.byteLength === 4) {
    return usable(new DataView(tag.buffer, tag.byteOffset, 4).getFloat32(0));
  }
  return null;
}

/** Beyond what can have been filmed, the tag is damaged. */
const usable = (rate: number): number | null => (rate > 0 && rate <= filmedRates.most ? rate : null);
