import { expect, it } from 'vitest';
import { definitionOn } from '#core/measures/definition-on';
import { catalogue } from '#core/measures/families';

it('tells up and down of a swimmer on the back as toward the belly and toward the back, and nothing else anew', () => {
  const changed = catalogue.filter(
    (each) =>
      definitionOn(each, { sideUp: 'back' }).label !== each.label ||
      definitionOn(each, { sideUp: 'back' }).brief !== each.brief,
  );
  for (const each of changed) {
    const told = definitionOn(each, { sideUp: 'back' });
    expect(`${told.label} ${told.brief}`).toMatch(
      /toward the (belly|back)|in the picture|kick top|kick bottom/,
    );
    expect(told).toEqual({ ...each, label: told.label, brief: told.brief });
  }
  // nothing is left that says up or down of the body without saying of what
  for (const each of catalogue.filter(({ group }) => group === 'kick')) {
    expect(definitionOn(each, { sideUp: 'back' }).label).not.toMatch(/\b(up|down)(-kick)?\b(?!.*picture)/i);
  }
  const label = (id: string): string | undefined => {
    const found = catalogue.find((each) => each.id === id);
    return found && definitionOn(found, { sideUp: 'back' }).label;
  };
  expect(label('down-kick-time')).toBe('Kick toward the back, time');
  expect(label('hip-height-at-kick-top')).toBe('Hip height at kick top');
  expect(definitionOn(catalogue[0] ?? changed[0] ?? ({} as never), { sideUp: 'front' })).toBe(catalogue[0]);
});
