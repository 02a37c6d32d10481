// Collects the licence texts of everything a package holds into .build/licences, from where it lies beside the program.
import { mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { root } from '../commands/set-up.mjs';
import { shippedPackages } from './shipped-packages.mjs';

const here = fileURLToPath(new URL('.', import.meta.url));
const licenceFile = /^(licen[cs]e|copying|unlicense|ofl|notice)([.-].*)?$/i;
/** Programs that Submark starts and is no part of: their own licence is the GPL. */
const mediaProgram = /^node_modules\/(@ff(mpeg|probe)-installer\/|ffmpeg-static$)/;

const nameOf = (person) => (typeof person === 'string' ? person : person?.name)?.replace(/\s*[<(].*$/, '');

/** The text that goes with a licence's name where a package brings none. */
const standardTexts = {
  // the same in every package that brings it
  'Apache-2.0': (holder) =>
    `Copyright ${holder}\n\n${readFileSync(path.join(root, 'node_modules/@techstark/opencv-js/LICENSE'), 'utf8').trim()}`,
  MIT: (holder) => `Copyright (c) ${holder}

Permission is hereby granted, free of charge, to any person obtaining a copy of this software and associated documentation files (the "Software"), to deal in the Software without restriction, including without limitation the rights to use, copy, modify, merge, publish, distribute, sublicense, and/or sell copies of the Software, and to permit persons to whom the Software is furnished to do so, subject to the following conditions:

The above copyright notice and this permission notice shall be included in all copies or substantial portions of the Software.

THE SOFTWARE IS PROVIDED "AS IS", WITHOUT WARRANTY OF ANY KIND, EXPRESS OR IMPLIED, INCLUDING BUT NOT LIMITED TO THE WARRANTIES OF MERCHANTABILITY, FITNESS FOR A PARTICULAR PURPOSE AND NONINFRINGEMENT. IN NO EVENT SHALL THE AUTHORS OR COPYRIGHT HOLDERS BE LIABLE FOR ANY CLAIM, DAMAGES OR OTHER LIABILITY, WHETHER IN AN ACTION OF CONTRACT, TORT OR OTHERWISE, ARISING FROM, OUT OF OR IN CONNECTION WITH THE SOFTWARE OR THE USE OR OTHER DEALINGS IN THE SOFTWARE.`,
  ISC: (holder) => `Copyright (c) ${holder}

Permission to use, copy, modify, and/or distribute this software for any purpose with or without fee is hereby granted, provided that the above copyright notice and this permission notice appear in all copies.

THE SOFTWARE IS PROVIDED "AS IS" AND THE AUTHOR DISCLAIMS ALL WARRANTIES WITH REGARD TO THIS SOFTWARE INCLUDING ALL IMPLIED WARRANTIES OF MERCHANTABILITY AND FITNESS. IN NO EVENT SHALL THE AUTHOR BE LIABLE FOR ANY SPECIAL, DIRECT, INDIRECT, OR CONSEQUENTIAL DAMAGES OR ANY DAMAGES WHATSOEVER RESULTING FROM LOSS OF USE, DATA OR PROFITS, WHETHER IN AN ACTION OF CONTRACT, NEGLIGENCE OR OTHER TORTIOUS ACTION, ARISING OUT OF OR IN CONNECTION WITH THE USE OR PERFORMANCE OF THIS SOFTWARE.`,
};

/** The name of a package's licence; some write it as a list. */
const licenceName = ({ license, licenses }) =>
  typeof license === 'string'
    ? license
    : (license?.type ?? licenses?.map(({ type }) => type).join(' OR ') ?? null);

/** What is known of one shipped package: name, version, licence, its text, and where its source is. Throws without a text. */
export function licenceOf(folder) {
  const facts = JSON.parse(readFileSync(path.join(root, folder, 'package.json'), 'utf8'));
  const texts = readdirSync(path.join(root, folder))
    .filter((name) => licenceFile.test(name))
    .map((name) => readFileSync(path.join(root, folder, name), 'utf8').trim());
  const licence = licenceName(facts);
  const repository = facts.repository?.url ?? facts.repository ?? facts.homepage ?? null;
  const holder =
    nameOf(facts.author) ?? nameOf(facts.contributors?.[0]) ?? `the contributors of ${facts.name}`;
  const standard = licence === null ? undefined : standardTexts[licence];
  if (texts.length === 0 && standard) texts.push(standard(holder));
  const program = mediaProgram.test(folder);
  if (texts.length === 0 && !program) throw new Error(`${folder} (${licence}) brings no licence text`);
  return { name: facts.name, version: facts.version, licence, repository, texts, program, facts };
}

function packagesText(licences) {
  const sections = licences.map(
    ({ name, version, licence, repository, texts }) =>
      `${'='.repeat(78)}\n${name} ${version}${licence ? ` (${licence})` : ''}\n${repository ? `${repository}\n` : ''}\n${texts.join('\n\n')}\n`,
  );
  return `Submark uses these packages, in whole or in part. Each is under its own licence, which follows.\n\n${sections.join('\n')}`;
}

/** The words that go with the two programs, and with their text of the GPL beside it. */
function programsText(programs) {
  const list = programs.map(({ name, version, licence, facts, repository }) => {
    const commit = /-g([0-9a-f]{8,})/.exec(facts.ffmpeg ?? facts.ffprobe ?? '')?.[1];
    return [
      `${name} ${version} (${licence})`,
      ...(facts.homepage ? [`  built by: ${facts.homepage}`] : []),
      ...(commit ? [`  source: https://git.ffmpeg.org/ffmpeg.git, commit ${commit}`] : []),
      ...(repository && repository !== facts.homepage ? [`  package: ${repository}`] : []),
    ].join('\n');
  });
  return `Submark starts two programs of the FFmpeg project, ffmpeg and ffprobe. They lie beside Submark as files of their own and can
be replaced: SUBMARK_FFMPEG and SUBMARK_FFPROBE name others. They are under the GNU General Public License, version 3 or
later (GPL-3.0.txt beside this file). Submark itself is under the MIT licence and contains no part of them.

Their source: https://ffmpeg.org/download.html and https://git.ffmpeg.org/ffmpeg.git; \`ffmpeg -version\` names the
revision and how it was built. The programs came in these npm packages:

${list.join('\n')}
`;
}

/** Every file of the folder of licences. */
export function licenceFiles() {
  const licences = shippedPackages().map(licenceOf);
  return {
    'Submark.txt': readFileSync(path.join(root, 'LICENSE'), 'utf8'),
    'npm packages and letters.txt': packagesText(licences.filter(({ program }) => !program)),
    'ffmpeg and ffprobe.txt': programsText(licences.filter(({ program }) => program)),
    'GPL-3.0.txt': readFileSync(path.join(here, 'GPL-3.0.txt'), 'utf8'),
    'Electron and Chromium.txt': `Submark runs in Electron, which contains Chromium and Node.js. Their licences lie beside the program: LICENSE.electron.txt
and LICENSES.chromium.html. Electron’s own follows.

${readFileSync(path.join(root, 'node_modules/electron/LICENSE'), 'utf8')}`,
  };
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? '').href) {
  const folder = path.join(root, '.build', 'licences');
  rmSync(folder, { recursive: true, force: true });
  mkdirSync(folder, { recursive: true });
  for (const [name, text] of Object.entries(licenceFiles())) writeFileSync(path.join(folder, name), text);
}
