import { defaultRangeExtractor, useWindowVirtualizer } from '@tanstack/react-virtual';
import { type Ref, useImperativeHandle, useLayoutEffect, useMemo, useRef, useState } from 'react';
import type { HostClient } from '../host/host-client';
import type { SwimGroup } from '../swims/filter-swims';
import { columnsFor, type ShelfRow, shelfRows } from './shelf-rows';
import { SwimTile, type TileActs } from './swim-tile';
import { SwimmerHead } from './swimmer-head';
import { shelfWords } from '#core/words/shelf';

export interface ShelfListHandle {
  /** Brings a swim's tile into sight and gives it the focus. */
  focus(swimId: string): void;
  /** The same for the very first or last tile. */
  focusEdge(edge: 'first' | 'last'): void;
}

interface Props {
  readonly groups: readonly SwimGroup[];
  readonly host: HostClient;
  /** The tile Tab comes to. */
  readonly reached: string | null;
  readonly chosen: ReadonlySet<string>;
  readonly acts: TileActs;
  readonly onSwimmer: (swimmerId: string) => void;
  readonly ref: Ref<ShelfListHandle>;
}

/** As in shelf.css: width of the swimmer's column with its gap, least width of a tile, gap between tiles. */
const layout = { head: 220, narrowHead: 132, tile: 232, gap: 16, narrow: 760 } as const;
/** Height of a row until it has been drawn once. */
const guessedRow = 330;

/** Swimmers and their swims; of thousands only the rows in sight, and a few around them, are drawn. */
export function ShelfList({ groups, host, reached, chosen, acts, onSwimmer, ref }: Props) {
  const list = useRef<HTMLDivElement>(null);
  const [width, setWidth] = useState(0);
  const [top, setTop] = useState(0);
  useLayoutEffect(() => {
    const element = list.current;
    if (!element) return;
    const measure = (): void => {
      setWidth(element.clientWidth);
      setTop(element.getBoundingClientRect().top + window.scrollY);
    };
    measure();
    const seen = new ResizeObserver(measure);
    seen.observe(element);
    seen.observe(document.body);
    return () => seen.disconnect();
  }, []);
  const columns = columnsFor(
    width - (window.innerWidth > layout.narrow ? layout.head : layout.narrowHead),
    layout.tile,
    layout.gap,
  );
  const rows = useMemo(() => shelfRows(groups, columns), [groups, columns]);
  const rowOf = useMemo(
    () => new Map(rows.flatMap((row, at) => row.swims.map((swim) => [swim.id, at] as const))),
    [rows],
  );
  const kept = reached === null ? undefined : rowOf.get(reached);
  const virtual = useWindowVirtualizer({
    count: width === 0 ? 0 : rows.length,
    estimateSize: () => guessedRow,
    overscan: 3,
    scrollMargin: top,
    // a sticky bar of filters lies over the top of the window
    scrollPaddingStart: 72,
    getItemKey: (at) => rows[at]?.key ?? at,
    // the tile that Tab comes to is always there
    rangeExtractor: (range) => {
      const inSight = defaultRangeExtractor(range);
      return kept === undefined || kept >= rows.length || inSight.includes(kept)
        ? inSight
        : [...inSight, kept].sort((a, b) => a - b);
    },
  });
  useImperativeHandle(ref, () => {
    const reveal = (at: number | undefined, find: () => HTMLElement | null | undefined): void => {
      let tries = 0;
      const attempt = (): void => {
        const tile = find();
        if (tile) {
          tile.focus();
          return;
        }
        if (at !== undefined) virtual.scrollToIndex(at, { align: 'auto' });
        // what was just loaded or scrolled to is drawn in one of the next turns
        if (tries++ < 20) requestAnimationFrame(attempt);
      };
      requestAnimationFrame(attempt);
    };
    const tiles = (): HTMLElement[] => [
      ...(list.current?.querySelectorAll<HTMLElement>('.swim-tile-open') ?? []),
    ];
    return {
      focus: (swimId) =>
        reveal(rowOf.get(swimId), () => tiles().find((tile) => tile.dataset.swim === swimId)),
      focusEdge(edge) {
        const at = edge === 'first' ? 0 : rows.length - 1;
        const swim = edge === 'first' ? rows[at]?.swims[0] : rows[at]?.swims.at(-1);
        if (swim) reveal(at, () => tiles().find((tile) => tile.dataset.swim === swim.id));
      },
    };
  }, [virtual, rowOf, rows]);

  const shown = virtual.getVirtualItems();
  const bySwimmer = new Map<SwimGroup, { index: number; row: ShelfRow; start: number }[]>();
  for (const { index, start } of shown) {
    const row = rows[index];
    if (row) bySwimmer.set(row.group, [...(bySwimmer.get(row.group) ?? []), { index, row, start }]);
  }
  const extent = useMemo(() => {
    const edges = new Map<SwimGroup, { first: number; last: number }>();
    rows.forEach(({ group }, at) => {
      edges.set(group, { first: edges.get(group)?.first ?? at, last: at });
    });
    return edges;
  }, [rows]);

  return (
    <div ref={list} className="shelf-list" style={{ height: virtual.getTotalSize() }}>
      {[...bySwimmer].map(([group, drawn]) => {
        const { first = 0, last = 0 } = extent.get(group) ?? {};
        const start = virtual.measurementsCache[first]?.start ?? top;
        const end = virtual.measurementsCache[last]?.end ?? start;
        return (
          <section
            key={group.key}
            className="swimmer-row"
            aria-label={group.name}
            style={{ top: start - top, height: end - start }}
          >
            <SwimmerHead group={group} onSwimmer={onSwimmer} />
            <div className="swimmer-tiles">
              {drawn.map(({ index, row, start: at }) => (
                <ul
                  key={row.key}
                  ref={virtual.measureElement}
                  data-index={index}
                  className="shelf-grid"
                  data-first={row.first || undefined}
                  data-last={row.last || undefined}
                  style={{ top: at - start, gridTemplateColumns: `repeat(${columns}, minmax(0, 1fr))` }}
                >
                  {row.swims.map((swim) => (
                    <SwimTile
                      key={swim.id}
                      swim={swim}
                      thumbnail={host.thumbnailAddress(swim.id)}
                      reached={swim.id === reached}
                      chosen={chosen.has(swim.id)}
                      acts={acts}
                    />
                  ))}
                  {row.swims.length === 0 && <li className="no-swims">{shelfWords('noSwimsYetFull')}</li>}
                </ul>
              ))}
            </div>
          </section>
        );
      })}
    </div>
  );
}
