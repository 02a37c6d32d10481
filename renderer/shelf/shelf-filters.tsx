import type { SwimSummary } from '#core/host-contract/operations';
import type { ShelfFilter } from './filter-swims';

interface Props {
  readonly swims: readonly SwimSummary[];
  readonly filter: ShelfFilter;
  readonly onChange: (filter: ShelfFilter) => void;
}

/** Search as you type, and the two questions asked most: which stroke, with or without aids. */
export function ShelfFilters({ swims, filter, onChange }: Props) {
  return (
    <search className="shelf-filters">
      <input
        type="search"
        placeholder={`Search ${swims.length} swims`}
        aria-label="Search swims"
        value={filter.text}
        onChange={(event) => onChange({ ...filter, text: event.target.value })}
      />
      <select
        aria-label="Stroke"
        value={filter.stroke ?? ''}
        onChange={(event) =>
          onChange({ ...filter, stroke: (event.target.value || null) as ShelfFilter['stroke'] })
        }
      >
        <option value="">Any stroke</option>
        <option value="butterfly">Butterfly</option>
        <option value="dolphin-kick">Dolphin kick</option>
      </select>
      <select
        aria-label="Aids"
        value={filter.aids ?? ''}
        onChange={(event) =>
          onChange({ ...filter, aids: (event.target.value || null) as ShelfFilter['aids'] })
        }
      >
        <option value="">With or without aids</option>
        <option value="without">Without aids</option>
        <option value="with">With aids</option>
      </select>
    </search>
  );
}
