import { firstSequenceSet } from './avc-sequence-set';

/**
 * Whether an H.264 sequence parameter set allows pictures coded as two fields (`frame_mbs_only_flag` is 0). Such film
 * may be interlaced; only decoding tells whether it is.
 *
 * `bytes` are a decoder configuration record (ISO/IEC 14496-15, 5.3.3.1) or coded data with start codes (ITU-T H.264,
 * annex B). False where there is no set to read.
 */
export function mayBeInterlacedAvc(bytes: Uint8Array): boolean {
  return firstSequenceSet(bytes)?.framesOnly === false;
}
