import type { ReactNode } from 'react';

/** How words of the catalogue draw a key: `rich(words.parts('back', { key: keyOf('back-one'), kbd: keyCap }))`. */
export const keyCap = (key: ReactNode): ReactNode => <kbd>{key}</kbd>;
