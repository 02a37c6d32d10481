import { type RefObject, useEffect } from 'react';
import type { ShelfListHandle } from './shelf-list';

const steps: Readonly<Record<string, 'left' | 'right' | 'up' | 'down' | 'first' | 'last'>> = {
  ArrowLeft: 'left',
  ArrowRight: 'right',
  ArrowUp: 'up',
  ArrowDown: 'down',
  Home: 'first',
  End: 'last',
};
const tileSelector = '.swim-tile-open';
const tilesIn = (element: ParentNode): HTMLElement[] => [
  ...element.querySelectorAll<HTMLElement>(tileSelector),
];

/** The swim whose tile has the focus, or null. */
export function focusedSwim(): string | null {
  const tile = document.activeElement?.closest<HTMLElement>(tileSelector);
  return tile?.dataset.swim ?? null;
}

/** Where the focus goes when a tile goes: to the next one, or the one before when it was the last. */
export function neighbourOf(swimId: string): string | null {
  const ids = tilesIn(document).map((tile) => tile.dataset.swim ?? '');
  const at = ids.indexOf(swimId);
  return ids[at + 1] ?? ids[at - 1] ?? null;
}

function tileFrom(tiles: readonly HTMLElement[], from: HTMLElement, key: string): HTMLElement | undefined {
  const at = tiles.indexOf(from);
  switch (steps[key]) {
    case 'left':
      return tiles[at - 1];
    case 'right':
      return tiles[at + 1];
    case 'up':
    case 'down': {
      const here = from.getBoundingClientRect();
      const ahead = steps[key] === 'down' ? tiles.slice(at + 1) : tiles.slice(0, at).reverse();
      const rows = ahead.filter((tile) => Math.abs(tile.getBoundingClientRect().top - here.top) > 8);
      const rowTop = rows[0]?.getBoundingClientRect().top;
      // the nearest of the next row, also where that row is shorter
      return rows
        .filter((tile) => Math.abs(tile.getBoundingClientRect().top - (rowTop ?? 0)) <= 8)
        .reduce<HTMLElement | undefined>((best, tile) => {
          const off = (each: HTMLElement): number => Math.abs(each.getBoundingClientRect().left - here.left);
          return best === undefined || off(tile) < off(best) ? tile : best;
        }, undefined);
    }
    default:
      return undefined;
  }
}

/** Arrow keys walk the tiles as they lie on the screen; Tab comes to the one last reached. */
export function useGridKeys(
  grid: RefObject<HTMLElement | null>,
  list: RefObject<ShelfListHandle | null>,
  onReach: (swimId: string) => void,
): void {
  useEffect(() => {
    const element = grid.current;
    if (!element) return;
    const walk = (event: KeyboardEvent): void => {
      const from = event.target instanceof Element ? event.target.closest<HTMLElement>(tileSelector) : null;
      if (!from || event.ctrlKey || event.metaKey || event.altKey) return;
      const edge = steps[event.key];
      if (edge === 'first' || edge === 'last') {
        event.preventDefault();
        list.current?.focusEdge(edge);
        return;
      }
      const to = tileFrom(tilesIn(element), from, event.key);
      if (!to) return;
      event.preventDefault();
      to.focus();
    };
    const reach = (event: FocusEvent): void => {
      const tile = event.target instanceof Element ? event.target.closest<HTMLElement>(tileSelector) : null;
      const id = tile?.dataset.swim;
      if (id) onReach(id);
    };
    element.addEventListener('keydown', walk);
    element.addEventListener('focusin', reach);
    return () => {
      element.removeEventListener('keydown', walk);
      element.removeEventListener('focusin', reach);
    };
  }, [grid, list, onReach]);
}
