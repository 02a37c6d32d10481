import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { IntlMessageFormat } from 'intl-messageformat';
import { describe, expect, it } from 'vitest';
import { root, sourceFiles } from './import-walk';

interface Linter {
  readonly plugins: readonly { readonly path: string; readonly includes: readonly string[] }[];
}
type Room = Readonly<{ messages: Readonly<Record<string, string>> }>;

const folder = path.join(root, 'shared-core', 'words');
const machinery = new Set(['words.ts', 'pseudo.ts']);
const catalogues = readdirSync(folder).filter((file) => !machinery.has(file));

/** Every catalogue by the name it is exported under, which is its file's and `Words`. */
const rooms = await Promise.all(
  catalogues.map(async (file) => {
    const name = `${path.basename(file, '.ts').replace(/-(.)/g, (_dash, next: string) => next.toUpperCase())}Words`;
    const all = (await import(path.join(folder, file))) as Readonly<Record<string, Room>>;
    const { messages } = all[name] ?? { messages: {} };
    return { file, name, messages };
  }),
);
const each = rooms.flatMap(({ file, name, messages }) =>
  Object.entries(messages).map(([key, message]) => ({ file, name, key, message })),
);

describe('the catalogue', () => {
  it('has every file export its messages under the file’s name', () => {
    expect(
      rooms.filter(({ messages }) => Object.keys(messages).length === 0).map(({ file }) => file),
    ).toEqual([]);
  });

  it('has messages that can be read, without straight quotes, spaces at an end or double spaces', () => {
    const wrong = each.filter(({ message }) => {
      new IntlMessageFormat(message, 'en');
      return /["']|^\s|\s$| {2}|\n/.test(message.replace(/'[<{]'/g, ''));
    });
    expect(wrong.map(({ file, key }) => `${file}: ${key}`)).toEqual([]);
  });

  it('holds no message that nothing says', () => {
    const files = sourceFiles();
    const said = new Map(
      rooms.map(({ name }) => [
        name,
        files.filter(({ text }) => text.includes(name)).map(({ text }) => text),
      ]),
    );
    const silent = each.filter(
      ({ name, key }) =>
        !said.get(name)?.some((text) => text.includes(`'${key}'`) && !text.includes(`export const ${name}`)),
    );
    expect(silent.map(({ file, key }) => `${file}: ${key}`)).toEqual([]);
  });
});

it('has the linter look for text in every component, without exceptions', () => {
  const linter = JSON.parse(readFileSync(path.join(root, '.biome.json'), 'utf8')) as Linter;
  const rule = linter.plugins.find((plugin) => plugin.path === './tests/house/no-literal-words.grit');
  expect(rule?.includes).toEqual(['renderer/**/*.tsx']);
});
