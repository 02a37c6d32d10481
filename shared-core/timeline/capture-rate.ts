/**
 * Slowdown told by a capture-rate tag: capture rate over stored rate, ≥ 1. Null where nothing readable is told, or
 * where the stored rate already is the capture rate within 2 % (our default: 29.97 against a tagged 30 is no slow
 * motion).
 *
 * `tags` are a container's raw metadata by key. Read are `com.android.capture.fps` (Android camera framework,
 * MediaRecorder "capture rate": a 32-bit float, or text) and `com.apple.quicktime.camera.framereadouttimeinmicroseconds`
 * is deliberately not: it tells the sensor's readout, not the rate.
 */
export function slowdownFromTags(tags: Readonly<Record<string, unknown>>, storedRate: number): number | null {
  const captured = numberOf(tags['com.android.capture.fps']);
  if (captured === null || !(storedRate > 0)) return null;
  const slowdown = captured / storedRate;
  return slowdown > 1.02 && slowdown <= 200 ? slowdown : null;
}

function numberOf(tag: unknown): number | null {
  if (typeof tag === 'number') return usable(tag);
  if (typeof tag === 'string') return usable(Number(tag));
  if (tag instanceof Uint8Array && tag.byteLength === 4) {
    return usable(new DataView(tag.buffer, tag.byteOffset, 4).getFloat32(0));
  }
  return null;
}

/** Rates up to 10,000 pictures a second are believed (our default); beyond, the tag is damaged. */
const usable = (rate: number): number | null => (rate > 0 && rate <= 10_000 ? rate : null);
