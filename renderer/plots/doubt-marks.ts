import { dot, type Markish, text } from '@observablehq/plot';

/** The word beside a point that is doubtful: doubt goes wherever a number goes, and a dot is a number too. */
export const doubtOn = (doubtful: boolean): { readonly doubt: '' | 'doubtful' } => ({
  doubt: doubtful ? 'doubtful' : '',
});

/** Over the dots of a plot: a ring around each doubtful one, and the word beside it. Empty where none is. */
export function doubtMarks<T extends { readonly doubt: string }>(
  data: readonly T[],
  x: keyof T & string,
  y: keyof T & string,
): readonly Markish[] {
  const doubtful = data.filter(({ doubt }) => doubt !== '');
  if (doubtful.length === 0) return [];
  return [
    dot(doubtful, { x, y, r: 11, stroke: 'currentColor', strokeWidth: 1.5, strokeDasharray: '3 3' }),
    text(doubtful, {
      ...{ x, y, text: 'doubt', dx: 14, dy: -9, textAnchor: 'start', fontWeight: 600 },
      ...{ fill: 'currentColor', stroke: 'var(--panel)', strokeWidth: 4 },
    }),
  ];
}
