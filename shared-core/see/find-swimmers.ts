import { type BodySighting, bodySighting } from './body-sighting';
import { cutSquare, type SeenPicture } from './cut-square';
import { type Detection, detectSize, onePerBody, readDetections } from './detect-output';
import { lookWindows } from './look-windows';
import { poseSize, readPose } from './pose-output';
import type { Square } from './square';

/** The two networks, whatever runs them. Numbers are copies, valid for good. */
export interface PoseNetworks {
  /** 224 × 224 × 3 numbers from −1 to 1. */
  detect(input: Float32Array): Promise<{ readonly boxes: Float32Array; readonly scores: Float32Array }>;
  /** 256 × 256 × 3 numbers from 0 to 1. */
  landmarks(
    input: Float32Array,
  ): Promise<{ readonly values: Float32Array; readonly sure: number; readonly mask: Float32Array }>;
}

/** A body seen on a picture, and where to look for it on the next. */
export interface SeenBody {
  readonly body: BodySighting;
  readonly next: Square;
}

/** Less sure than this, the network looks at no body. The network's own published limit. */
const bodyThere = 0.5;
/** A detection this sure is worth a look by the landmark network, which decides. Lower than usual: swimmers lie. Our choice. */
const worthALook = 0.3;
/** At most so many are looked at in one picture, surest first. */
const mostLooks = 6;

/** Looks at one square with the landmark network; null when no body is there. */
export async function seeBody(
  networks: PoseNetworks,
  picture: SeenPicture,
  square: Square,
): Promise<SeenBody | null> {
  const { values, sure, mask } = await networks.landmarks(cutSquare(picture, square, poseSize, 0, 1));
  if (!(sure >= bodyThere)) return null;
  const pose = readPose(values, sure, square);
  return { body: bodySighting(pose, { size: poseSize, values: mask }, square), next: pose.next };
}

/** Everybody that a picture shows, surest first: detected in windows, then looked at twice, the second time in the square the first asks for. */
export async function findSwimmers(
  networks: PoseNetworks,
  picture: SeenPicture,
): Promise<readonly Detection[]> {
  const detections: Detection[] = [];
  for (const window of lookWindows(picture.width * picture.step, picture.height * picture.step)) {
    const { boxes, scores } = await networks.detect(cutSquare(picture, window, detectSize, -1, 1));
    detections.push(...readDetections(boxes, scores, window, worthALook));
  }
  const found: Detection[] = [];
  for (const { square } of onePerBody(detections).slice(0, mostLooks)) {
    const first = await seeBody(networks, picture, square);
    const second = first && (await seeBody(networks, picture, first.next));
    if (second) found.push({ square: second.next, sure: second.body.sure });
  }
  return onePerBody(found);
}
