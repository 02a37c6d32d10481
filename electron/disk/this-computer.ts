import { createHash } from 'node:crypto';
import { hostname } from 'node:os';

/** This computer among those that share a folder: the same from start to start, and no name that says whose it is. */
export const thisComputer = createHash('sha256').update(hostname()).digest('hex').slice(0, 8);
