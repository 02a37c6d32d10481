/** Each way in which Electron's window can't be opened, in words for the coach. Each ends where a browser takes over. */
const words = {
  'no-screen': () => 'There is no screen to open a window on',
  root: () => 'Electron opens no window for root, because it would have to give up its sandbox',
  'not-in-folder': ({ folder }) => `ELECTRON_OVERRIDE_DIST_PATH names ${folder}, but Electron isn’t in it`,
  'not-wanted': () => 'ELECTRON_SKIP_BINARY_DOWNLOAD is set, so Electron’s program was not fetched',
  'old-node': ({ needed, node }) =>
    `Fetching Electron’s program needs Node ${needed} or newer, and this is Node ${node}`,
  silent: ({ seconds }) => `Nothing of Electron’s program arrived for ${seconds} seconds`,
  unreachable: ({ fault }) =>
    `The server with Electron’s program can’t be reached${fault ? ` (${fault})` : ''}`,
  refused: ({ status }) => `The server doesn’t give out Electron’s program (it answered ${status})`,
  cut: ({ fault }) => `The download of Electron’s program broke off${fault ? ` (${fault})` : ''}`,
  'wrong-checksum': () => 'The downloaded file is not Electron’s program, because its checksum is wrong',
  'disk-full': () => 'There is no room on the disk for Electron’s program',
  'not-unpacked': () => 'Electron’s program could not be unpacked in time',
  'not-installed': ({ said }) => `Electron’s installer failed${said ? ` (${said})` : ''}`,
  'no-library': ({ library }) => `Electron can’t start without the system library ${library}`,
  'no-sandbox': () => 'This system doesn’t let Electron use its sandbox',
  'screen-refused': () => 'Electron can’t reach the screen',
  'not-started': ({ fault }) => `Electron’s program can’t be started (${fault})`,
  'ended-at-once': ({ how }) => `Electron ended at once (${how})`,
};

/** What another try could mend, and what is not worth one at each start. */
const fetchFailures = [
  'silent',
  'unreachable',
  'refused',
  'cut',
  'wrong-checksum',
  'disk-full',
  'not-unpacked',
  'not-installed',
];
export const isFetchFailure = (reason) => fetchFailures.includes(reason.code);

/** One sentence for a reason; two where the coach can do something about it. */
export function whyNoElectron(reason, { earlier = false } = {}) {
  const what = words[reason.code](reason);
  const then =
    reason.code === 'no-screen'
      ? 'open the address below in a browser'
      : 'Submark opens in a browser instead';
  const again = isFetchFailure(reason) ? ' To try again: npm start -- --get-electron' : '';
  return `${earlier ? 'At an earlier start: ' : ''}${what}, so ${then}.${again}`;
}
