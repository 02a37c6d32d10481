import { chmod, lstat, open, readdir } from 'node:fs/promises';
import path from 'node:path';

/** How programs begin: ELF; Mach-O of 32 and 64 bits and of several machines; Windows; a script with its interpreter. */
const programStarts = ['7f454c46', 'cffaedfe', 'cefaedfe', 'cafebabe', '4d5a', '2321'];

async function startsAsProgram(file) {
  const handle = await open(file);
  try {
    const { bytesRead, buffer } = await handle.read(Buffer.alloc(4), 0, 4, 0);
    const start = buffer.subarray(0, bytesRead).toString('hex');
    return programStarts.some((each) => start.startsWith(each));
  } finally {
    await handle.close();
  }
}

/**
 * Makes everything in a folder readable for every account, folders enterable and programs startable. Files come from npm
 * packages with the modes their makers happened to have (an ffprobe that only its owner may start, for one), and a package
 * that is installed belongs to root. Owner's, and set-user-id, bits stay.
 */
export async function openToEverybody(folder) {
  await chmod(folder, 0o755);
  for (const entry of await readdir(folder, { withFileTypes: true })) {
    const place = path.join(folder, entry.name);
    if (entry.isDirectory()) await openToEverybody(place);
    else if (entry.isFile()) {
      const { mode } = await lstat(place);
      // a program without a bit for its owner is one that lost it on the way
      const program =
        (mode & 0o111) !== 0 ||
        (/^ff(mpeg|probe)(\.exe)?$/.test(entry.name) && (await startsAsProgram(place)));
      await chmod(place, (mode & 0o7000) | (program ? 0o755 : 0o644));
    }
  }
}
