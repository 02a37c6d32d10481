import { avcTypes, avcUnits, avcUnitType } from './avc-units';

/**
 * Whether no other picture leans on this one, so that it may be left out of decoding without harm: every slice of the coded
 * H.264 picture says so (`nal_ref_idc` 0; ITU-T H.264, 7.4.1). `lengthBytes` as in `avcUnits`. False where nothing can be
 * read.
 */
export function isDisposableAvc(data: Uint8Array, lengthBytes: number | null): boolean {
  let slices = 0;
  for (const unit of avcUnits(data, lengthBytes)) {
    const type = avcUnitType(unit);
    // a key picture is never disposable
    if (type === avcTypes.instant) return false;
    if (type !== avcTypes.slice && type !== avcTypes.firstPart) continue;
    if ((((unit[0] as number) >> 5) & 3) !== 0) return false;
    slices += 1;
  }
  return slices > 0;
}

/** Whether decoding starts anew with this coded H.264 picture: nothing after it leans on anything before it (type 5, 7.4.1.2.4). */
export function isInstantAvc(data: Uint8Array, lengthBytes: number | null): boolean {
  for (const unit of avcUnits(data, lengthBytes)) if (avcUnitType(unit) === avcTypes.instant) return true;
  return false;
}
