import type { Posture } from './swim-schema';

/** Whether a posture is a body line at all: where the coach only said that a point is hidden, it is none. */
export const hasPoint = ({ points }: Pick<Posture, 'points'>): boolean => Object.keys(points).length > 0;
