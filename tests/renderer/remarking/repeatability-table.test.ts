import { createElement } from 'react';
import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, it } from 'vitest';
import { type CoachFile, emptyCoach } from '#core/swim-file/coach-file';
import { RepeatabilityTable } from '../../../renderer/remarking/repeatability-table';

type Entry = CoachFile['remarkings'][number];
const entry = (change: Partial<Entry>): Entry => ({
  item: 'shoulder',
  axis: 'time',
  difference: 0,
  frameSeconds: null,
  of: 'marked',
  on: '2026-05-01T10:00:00.000Z',
  swimId: 'swim-1',
  ...change,
});
/** Rows as the coach reads them: words of each cell, without markup. */
function rows(remarkings: Entry[]): string[][] {
  const html = renderToStaticMarkup(
    createElement(RepeatabilityTable, { coach: { ...emptyCoach, remarkings }, pictureHeight: 720 }),
  );
  return [...html.matchAll(/<tr data-item[^>]*>(.*?)<\/tr>/g)].map(([, row = '']) =>
    [...row.matchAll(/<t[hd][^>]*>(.*?)<\/t[hd]>/g)].map(([, cell = '']) =>
      cell.replace(/<[^>]+>/g, ' ').trim(),
    ),
  );
}

describe('the table of what was marked again', () => {
  it('tells the instant of the shoulders from the shoulder of the body line', () => {
    const twelve = Array.from({ length: 12 }, (_, i) => i % 2);
    const [moment, along] = rows([
      ...twelve.map((each) => entry({ difference: 0.02 * each })),
      ...twelve.map((each) => entry({ axis: 'x', difference: 4 * each, pictureHeight: 720 })),
    ]);
    // by hand: SD of 0, 20, 0, 20 … ms is 10.445, over √2 7.386; times 1.96 · √2 20.47
    expect(moment).toEqual([
      'Hands under shoulders',
      '12',
      '7.4 ms',
      '10.0 ms later',
      '20.5 ms',
      '7.4 ms, measured',
    ]);
    // the same in pixels: SD of 0, 4 … is 2.089, over √2 1.477
    expect(along).toEqual([
      'Shoulder, along the picture',
      '12',
      '1.5 px',
      '2.0 px right',
      '4.1 px',
      '1.5 px, measured',
    ]);
  });

  it('says too few to trust below ten pairs, and nothing of a single one', () => {
    const [few] = rows([0, 1, 2].map((i) => entry({ item: 'entry', difference: -0.01 * i })));
    expect(few?.[3]).toBe('10.0 ms earlier');
    expect(few?.[5]).toMatch(/^10\.0 ms, assumed\s+too few to trust: 10 pairs are needed$/);
    const [one] = rows([entry({ item: 'toe', axis: 'y', of: 'followed', difference: 3 })]);
    expect(one?.slice(0, 5)).toEqual(['Toe, up and down, followed', '1', '–', '–', '–']);
  });
});
