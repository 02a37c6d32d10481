import { type RefObject, useEffect } from 'react';

const steps: Readonly<Record<string, 'left' | 'right' | 'up' | 'down'>> = {
  ArrowLeft: 'left',
  ArrowRight: 'right',
  ArrowUp: 'up',
  ArrowDown: 'down',
};

/** Arrow keys walk the tiles as they lie on the screen; Enter and Delete belong to the tile itself. */
export function useGridKeys(grid: RefObject<HTMLElement | null>): void {
  useEffect(() => {
    const element = grid.current;
    if (!element) return;
    const walk = (event: KeyboardEvent): void => {
      const way = steps[event.key];
      const from =
        event.target instanceof Element ? event.target.closest<HTMLElement>('.swim-tile-open') : null;
      if (!way || !from) return;
      const tiles = [...element.querySelectorAll<HTMLElement>('.swim-tile-open')];
      const at = tiles.indexOf(from);
      let to: HTMLElement | undefined;
      if (way === 'left' || way === 'right') to = tiles[at + (way === 'right' ? 1 : -1)];
      else {
        const here = from.getBoundingClientRect();
        const rows = way === 'down' ? tiles.slice(at + 1) : tiles.slice(0, at).reverse();
        to = rows.find((tile) => {
          const there = tile.getBoundingClientRect();
          return Math.abs(there.top - here.top) > 8 && Math.abs(there.left - here.left) < here.width / 2;
        });
      }
      if (!to) return;
      event.preventDefault();
      to.focus();
    };
    element.addEventListener('keydown', walk);
    return () => element.removeEventListener('keydown', walk);
  }, [grid]);
}
