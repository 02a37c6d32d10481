import type { InputVideoTrack } from 'mediabunny';
import type { PacketIndex } from './packet-index';

/**
 * A decoder's configuration. Software decoding is preferred where it keeps up anyway: its pictures are plain memory,
 * and it has no small pool of pictures to run dry. HEVC is decoded by hardware or not at all.
 */
export async function decoderConfigOf(track: InputVideoTrack): Promise<VideoDecoderConfig | null> {
  const config = await track.getDecoderConfig();
  if (!config) return null;
  const { colorSpace, ...rest } = config;
  return {
    ...rest,
    // a partly filled colour space loses the part it has in Chromium: fill it with what HD film is without a tag
    colorSpace: {
      primaries: colorSpace?.primaries ?? 'bt709',
      matrix: colorSpace?.matrix ?? 'bt709',
      transfer: colorSpace?.transfer ?? 'bt709',
      fullRange: colorSpace?.fullRange ?? false,
    },
    hardwareAcceleration: (await track.getCodec()) === 'hevc' ? 'no-preference' : 'prefer-software',
  };
}

/** How many pictures a probe feeds at most when it also looks at the order in which they come out. */
const orderProbe = 12;

export interface DecodingProbe {
  readonly decodable: boolean;
  /** Pictures came out in another order than their timestamps say, though those only ever rise. */
  readonly outOfOrder: boolean;
  /** What the first picture holds once its borders are cut off, in its own pixels; null where none came. */
  readonly visible: { readonly width: number; readonly height: number } | null;
}

/**
 * Decodes the first real picture: the only sure sign, since support told from the codec's name can be wrong. Where
 * timestamps only ever rise in decoding order, a dozen pictures are decoded: a file without showing times (it lists
 * decoding times only) is recognised by pictures that come out of the decoder in another order.
 */
export async function probeDecoding(
  config: VideoDecoderConfig,
  index: PacketIndex,
  signal: AbortSignal,
): Promise<DecodingProbe> {
  const supported = await VideoDecoder.isConfigSupported(config).then(
    (answer) => answer.supported === true,
    (problem: unknown) => {
      if (problem instanceof TypeError || problem instanceof DOMException) return false;
      throw problem;
    },
  );
  if (!supported) return { decodable: false, outOfOrder: false, visible: null };
  const { pictures, order } = index;
  const start = order.keyOfFrame[0] ?? 0;
  const rising = pictures
    .slice(start, start + orderProbe)
    .every((p, i, all) => i === 0 || p.tick > (all[i - 1]?.tick ?? 0));
  const reorders = /^(avc|hev|hvc)/.test(config.codec);
  const wanted = rising && reorders ? orderProbe : 1;
  const seen: number[] = [];
  let visible: DecodingProbe['visible'] = null;
  let died = false;
  const decoder = new VideoDecoder({
    output: (frame) => {
      seen.push(frame.timestamp);
      const { visibleRect } = frame;
      if (visibleRect) visible ??= { width: visibleRect.width, height: visibleRect.height };
      frame.close();
    },
    error: () => {
      died = true;
    },
  });
  try {
    decoder.configure(config);
    let fed = 0;
    for await (const packet of index.readFrom(start)) {
      signal.throwIfAborted();
      if (died || seen.length >= wanted || fed >= Math.max(wanted, 32)) break;
      decoder.decode(new EncodedVideoChunk({ type: packet.type, timestamp: fed * 1000, data: packet.data }));
      fed += 1;
      if (fed >= wanted) await new Promise((resolve) => setTimeout(resolve, 0));
    }
    if (seen.length < wanted && !died) await decoder.flush();
  } catch (problem) {
    signal.throwIfAborted();
    if (!(problem instanceof DOMException)) throw problem;
  } finally {
    if (decoder.state !== 'closed') decoder.close();
  }
  const outOfOrder = rising && seen.some((time, i) => i > 0 && time < (seen[i - 1] as number));
  return { decodable: seen.length > 0, outOfOrder, visible };
}
