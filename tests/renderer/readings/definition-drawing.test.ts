import { createElement } from 'react';
import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, it } from 'vitest';
import { catalogue } from '#core/measures/families';
import { DefinitionDrawing } from '../../../renderer/readings/definition-drawing';

describe('the drawing of a definition', () => {
  it('shows for every reading of the catalogue what is measured, and no number that is none', () => {
    for (const definition of catalogue) {
      const drawn = renderToStaticMarkup(createElement(DefinitionDrawing, { definition }));
      expect(drawn, definition.id).toContain('drawn-asked');
      expect(drawn, definition.id).not.toMatch(/NaN|undefined|Infinity/);
    }
  });

  it('differs between readings that are taken differently', () => {
    const drawn = (id: string): string => {
      const definition = catalogue.find((each) => each.id === id);
      if (!definition) throw new Error(`no reading ${id}`);
      return renderToStaticMarkup(createElement(DefinitionDrawing, { definition })).replace(
        /(aria-label|data-drawing)="[^"]*"/g,
        '',
      );
    };
    const ids = [
      'gap-t1',
      'gap-t2',
      'gap-t3',
      'gap-t4',
      'knee-angle',
      'hip-angle',
      'undulation-toe',
      'undulation-hip',
    ];
    expect(new Set(ids.map(drawn)).size).toBe(ids.length);
  });
});
