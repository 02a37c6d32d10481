import { createElement, Fragment, type ReactNode } from 'react';

/** The parts of a message, texts and drawn pieces in order, as what stands between tags. */
export function rich(parts: readonly ReactNode[]): ReactNode {
  return createElement(Fragment, null, ...parts);
}
