import { type RefObject, useLayoutEffect, useState } from 'react';

/** CSS pixels. */
export interface Size {
  readonly width: number;
  readonly height: number;
}

/** Size of an element in whole CSS pixels, following its box. */
export function useElementSize(element: RefObject<HTMLElement | null>): Size {
  const [size, setSize] = useState<Size>({ width: 0, height: 0 });
  useLayoutEffect(() => {
    const box = element.current;
    if (!box) return;
    const measure = (): void => {
      const width = Math.floor(box.clientWidth);
      const height = Math.floor(box.clientHeight);
      setSize((old) => (old.width === width && old.height === height ? old : { width, height }));
    };
    measure();
    const watch = new ResizeObserver(measure);
    watch.observe(box);
    return () => watch.disconnect();
  }, [element]);
  return size;
}
