import { createHash } from 'node:crypto';
import {
  existsSync,
  lstatSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { hostErrorSchema, type Result } from '#core/host-contract/host-error';
import { parseSwim, serialiseSwim } from '#core/swim-file/swim-file';
import { createHost } from '#electron/host/create-host';
import { restoreLibrary } from '#electron/host/upkeep/restore-library';
import { aSwim } from '#tests/shared-core/swim-file/a-swim';
import { mutateBytes, mutateText, mutateValue, pickOf, type Random } from './mutate';
import { type RawEntry, rawZip } from './raw-zip';
import type { FuzzTarget } from './run-fuzz';

const film = Buffer.from('hello video');
const sha256 = (bytes: Uint8Array): string => createHash('sha256').update(bytes).digest('hex');
const json = (value: unknown): Buffer => Buffer.from(JSON.stringify(value) ?? 'null');

/** What a zip holds before it is bent, and how its manifest lists it. */
interface Model {
  readonly files: readonly { readonly name: string; readonly bytes: Buffer }[];
  readonly manifestName: string;
  manifest(files: readonly { readonly name: string; readonly bytes: Buffer }[]): unknown;
}

const swim = aSwim({
  clip: {
    ...aSwim().clip,
    place: { kind: 'inside', name: 'clip.mp4' },
    fingerprint: { bytes: film.length, edgesSha256: sha256(Buffer.concat([film, film])) },
  },
});

const bundle: Model = {
  files: [
    { name: 'swim.json', bytes: Buffer.from(serialiseSwim(swim)) },
    { name: 'clip.mp4', bytes: film },
    { name: 'handout.json', bytes: json({ format: 'submark-handout' }) },
  ],
  manifestName: 'manifest.json',
  manifest: (files) => ({
    format: 'submark-bundle',
    version: 1,
    madeAt: '2026-05-14T09:00:00.000Z',
    swimId: swim.id,
    files: files.map(({ name, bytes }) => ({ name, bytes: bytes.length, sha256: sha256(bytes) })),
  }),
};

const backUp: Model = {
  files: [
    { name: 'library.json', bytes: json({ format: 'submark-library', version: 1 }) },
    { name: 'squad.json', bytes: json({ format: 'submark-squad', version: 1, swimmers: [] }) },
    { name: 'swims/swim-1/swim.json', bytes: Buffer.from(serialiseSwim(swim)) },
    { name: 'swims/swim-1/clip.mp4', bytes: film },
  ],
  manifestName: 'submark-manifest.json',
  manifest: (files) => ({
    format: 'submark-archive',
    version: 1,
    createdAt: '2026-05-14T09:00:00.000Z',
    files: files.map(({ name, bytes }) => ({ path: name, bytes: bytes.length, sha256: sha256(bytes) })),
    outside: [],
  }),
};

/** A name that asks for a place of its own, where anyone may write. */
const absoluteOutside = path.join(tmpdir(), 'outside-of-submark.txt');

const hostileNames = [
  '../outside.txt',
  '../../outside.txt',
  'swims/../../outside.txt',
  absoluteOutside,
  'C:\\outside.txt',
  '..\\outside.txt',
  'a/./b',
  'a//b',
  'a\0b.mp4',
  'CON',
  '.hidden',
  'clip.mp4/',
  'swim.json/x',
  'SWIM.JSON',
  'x'.repeat(5000),
  '',
  '.',
  '..',
];

/** Claims that a zip's headers make and its bytes don't keep. */
function falseClaims(random: Random): RawEntry['claims'] {
  const number = pickOf(random, [0, 1, 11, 0x7fff_ffff, 0xffff_ffff]) ?? 0;
  return (
    pickOf(random, [
      { size: number },
      { packed: number },
      { crc: number },
      { method: pickOf(random, [1, 8, 9, 12, 99]) ?? 99 },
      { flags: pickOf(random, [1, 8, 0x41, 0xffff]) ?? 1 },
      { attributes: (pickOf(random, [0o120777, 0o040755, 0o060644, 0o010644]) ?? 0) * 0x1_0000 },
      // sizes in a Zip64 field
      {
        size: 0xffff_ffff,
        packed: 0xffff_ffff,
        extra: Buffer.from('01001000ffffffffffffff7fffffffffffffff7f', 'hex'),
      },
    ]) ?? {}
  );
}

/** A zip as the model says, bent in one or two ways; half of them keep their manifest true to what was bent. */
function bentZip(random: Random, model: Model): Buffer {
  let files = model.files.map((each) => ({ ...each }));
  const at = Math.floor(random() * files.length);
  const chosen = files[at] ?? files[0];
  if (!chosen) throw new Error('a model has files');
  let extra: RawEntry[] = [];
  let claims: RawEntry['claims'];
  let claimedCount: number | undefined;
  const replace = (change: Partial<(typeof files)[number]>): void => {
    files = files.map((each, i) => (i === at ? { ...each, ...change } : each));
  };
  switch (Math.floor(random() * 9)) {
    case 0:
      replace({ name: pickOf(random, hostileNames) ?? '..' });
      break;
    case 1:
      extra = [
        { name: pickOf(random, [...hostileNames, chosen.name, model.manifestName]) ?? '', bytes: film },
      ];
      break;
    case 2:
      // two of one name, by manifest too
      files = [...files, { name: random() < 0.5 ? chosen.name : chosen.name.toUpperCase(), bytes: film }];
      break;
    case 3:
      claims = falseClaims(random);
      break;
    case 4:
      // a bomb: zeros shrink a thousandfold
      replace({ bytes: Buffer.alloc((pickOf(random, [2, 8, 24]) ?? 2) * 1024 ** 2) });
      break;
    case 5:
      if (/\.json$/.test(chosen.name)) {
        const value: unknown = JSON.parse(chosen.bytes.toString('utf8'));
        replace({ bytes: json(mutateValue(random, value)) });
      } else replace({ bytes: Buffer.from(mutateBytes(random, chosen.bytes, 11)) });
      break;
    case 6:
      files = files.filter((_, i) => i !== at);
      break;
    case 7:
      claimedCount = pickOf(random, [0, 1, 17, 65_535]);
      break;
    default:
      extra = Array.from({ length: 40 }, (_, i) => ({ name: `more-${i}`, bytes: Buffer.alloc(0) }));
  }
  const listed = random() < 0.5 ? files : model.files;
  const manifest: unknown =
    random() < 0.15 ? mutateValue(random, model.manifest(listed)) : model.manifest(listed);
  const text = JSON.stringify(manifest) ?? 'null';
  const entries: RawEntry[] = [
    ...files.map(({ name, bytes }, i) => ({
      name,
      bytes,
      deflate: bytes.length > 1000,
      ...(claims && i === at ? { claims } : {}),
    })),
    ...extra,
    { name: model.manifestName, bytes: Buffer.from(random() < 0.05 ? mutateText(random, text) : text) },
  ];
  const zip = rawZip(random() < 0.5 ? entries : entries.toReversed(), claimedCount);
  if (random() > 0.3) return zip;
  // the directory lies at the end, so the end is bent as heads elsewhere are
  return random() < 0.5
    ? Buffer.from(mutateBytes(random, zip, 200))
    : Buffer.from(mutateBytes(random, zip.toReversed(), 500).toReversed());
}

const filesUnder = (folder: string): string[] =>
  readdirSync(folder, { recursive: true, encoding: 'utf8' }).filter((name) =>
    lstatSync(path.join(folder, name)).isFile(),
  );

export interface ArchivesUnderFire {
  readonly targets: readonly FuzzTarget[];
  close(): Promise<void>;
}

/** Bundles fed to a host, and back-ups restored into folders beside it, with a file around them that nothing may touch. */
export async function archivesUnderFire(): Promise<ArchivesUnderFire> {
  const parent = mkdtempSync(path.join(tmpdir(), 'submark-zips-'));
  const library = path.join(parent, 'library');
  const outside = path.join(parent, 'outside.txt');
  writeFileSync(outside, 'untouched');
  const made = await createHost({ libraryPath: library, samplesPath: null });
  if (!made.ok) throw new Error(made.error.code);
  const host = made.value;
  const arriving = path.join(library, '.arriving');
  const around = readdirSync(parent).sort().join();

  const typed = (answer: Result<unknown>): void => {
    if (!answer.ok) hostErrorSchema.parse(answer.error);
  };
  const untouched = (): void => {
    if (readFileSync(outside, 'utf8') !== 'untouched') throw new Error('a file outside was changed');
    const now = readdirSync(parent).sort().join();
    if (now !== around) throw new Error(`something was left beside the library: ${now}`);
    if (existsSync(absoluteOutside)) throw new Error(`${absoluteOutside} was written`);
  };
  const wholeSwim = (file: string): void => {
    const parsed = parseSwim(readFileSync(file, 'utf8'));
    if (!parsed.ok) throw new Error(`a swim was taken that does not open: ${parsed.fault.code}`);
  };

  const bundles: FuzzTarget = {
    name: 'bundles',
    async run(random, note) {
      const zip = bentZip(random, bundle);
      note(zip);
      const answer = await host.bundles.arrive(new Blob([new Uint8Array(zip)]).stream());
      typed(answer);
      untouched();
      if (answer.ok) {
        const { bundleId, there } = answer.value;
        const as = there ? (random() < 0.5 ? 'both' : 'replace') : 'new';
        const kept = await host.run('bundle/keep', { bundleId, as });
        typed(kept);
        if (!kept.ok) await host.run('bundle/discard', { bundleId });
        for (const id of readdirSync(path.join(library, 'swims'))) {
          wholeSwim(path.join(library, 'swims', id, 'swim.json'));
          rmSync(path.join(library, 'swims', id), { recursive: true });
        }
        rmSync(path.join(library, 'bin'), { recursive: true, force: true });
      }
      const left = filesUnder(arriving);
      if (left.length > 0) throw new Error(`left in the arriving folder: ${left.join()}`);
      untouched();
    },
  };

  let count = 0;
  const archives: FuzzTarget = {
    name: 'back-ups',
    async run(random, note) {
      const zip = bentZip(random, backUp);
      note(zip);
      const archive = path.join(library, `${count}.zip`);
      const into = path.join(library, `restored-${count++}`);
      writeFileSync(archive, zip);
      try {
        const answer = await restoreLibrary(
          archive,
          into,
          'draft',
          new AbortController().signal,
          () => undefined,
        );
        typed(answer);
        if (answer.ok) {
          const files = filesUnder(into);
          if (files.length !== answer.value.files) throw new Error('other files than it said');
          // a name that another system would take for a way out is no name here either
          for (const name of files)
            if (/[\\\0]|^\.{0,2}$/.test(path.basename(name))) throw new Error(`took the name ${name}`);
        } else if (existsSync(into)) throw new Error('a refused back-up left a folder');
        if (existsSync(`${into}.draft.part`)) throw new Error('what was half unpacked was left');
      } finally {
        rmSync(archive, { force: true });
        rmSync(into, { recursive: true, force: true });
        rmSync(`${into}.draft.part`, { recursive: true, force: true });
      }
      untouched();
    },
  };
  return {
    targets: [bundles, archives],
    close: async () => {
      await host.close();
      rmSync(parent, { recursive: true, force: true });
    },
  };
}
