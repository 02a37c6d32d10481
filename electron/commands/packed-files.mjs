import { existsSync, readdirSync, statSync } from 'node:fs';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import packaging from '../packaging.mjs';
import { shippedPackages } from '../packing/shipped-packages.mjs';
import { root } from './set-up.mjs';

// What electron-builder would pack from what lies here, without it: its own rules are for the parts of packages that no
// program needs, and the patterns of packaging.mjs.

/** Left out of every package (electron-builder's documentation, "Application Contents"). */
const neverPacked = /(^|\/)(test|__tests__|tests|powered-test|example|examples)\/|\.d\.ts$|\/\.bin\//;

const expressionOf = (pattern) => {
  if (/[?{[(]/.test(pattern)) throw new Error(`${pattern} is not a pattern this list knows`);
  const source = pattern
    .split(/(\*\*\/|\*\*|\*)/)
    .map((part) => ({ '**/': '(?:.*/)?', '**': '.*', '*': '[^/]*' })[part] ?? escaped(part));
  return new RegExp(`^${source.join('')}$`);
};
const escaped = (text) => text.replace(/[.+^$()|\\/-]/g, '\\$&');

/** Whether patterns take a file: the last one that fits decides, one with `!` against it. Without any it isn't taken. */
function takes(patterns, file) {
  const last = patterns.findLast((pattern) => expressionOf(pattern.replace(/^!/, '')).test(file));
  return last !== undefined && !last.startsWith('!');
}

function* filesUnder(folder) {
  for (const each of readdirSync(path.join(root, folder), { withFileTypes: true })) {
    const name = `${folder}/${each.name}`;
    if (each.isDirectory()) yield* filesUnder(name);
    else yield name;
  }
}

/** Files of packages that are not for development only; packages inside a package are in the list themselves. */
function* packageFiles() {
  for (const folder of shippedPackages())
    for (const file of filesUnder(folder))
      if (!file.slice(folder.length).includes('/node_modules/') && !neverPacked.test(file)) yield file;
}

/** Files inside the archive and files beside it, by their place in the project. */
export function packedFiles() {
  const own = packaging.files.flatMap((pattern) => {
    const place = pattern.replace(/\/\*\*$/, '');
    if (/^(!|node_modules)/.test(place) || !existsSync(path.join(root, place))) return [];
    return statSync(path.join(root, place)).isDirectory() ? [...filesUnder(place)] : [place];
  });
  const all = [...new Set([...own, ...packageFiles()])].filter((file) => takes(packaging.files, file));
  return {
    inside: all.filter((file) => !takes(packaging.asarUnpack, file)),
    beside: all.filter((file) => takes(packaging.asarUnpack, file)),
  };
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? '').href) {
  const { inside, beside } = packedFiles();
  const groupOf = (file) => file.match(/^(node_modules\/(?:@[^/]+\/)?[^/]+|[^/]+\/[^/]+|[^/]+)/)?.[0] ?? file;
  for (const [where, files] of Object.entries({ 'in the archive': inside, 'beside it': beside })) {
    const groups = new Map();
    for (const file of files) {
      const sum = groups.get(groupOf(file)) ?? { files: 0, bytes: 0 };
      sum.files += 1;
      sum.bytes += statSync(path.join(root, file)).size;
      groups.set(groupOf(file), sum);
    }
    console.log(where);
    for (const [group, sum] of [...groups].sort(([, a], [, b]) => b.bytes - a.bytes))
      console.log(
        `  ${(sum.bytes / 1e6).toFixed(2).padStart(8)} MB ${String(sum.files).padStart(5)} files  ${group}`,
      );
  }
}
