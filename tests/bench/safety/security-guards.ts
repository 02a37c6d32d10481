/** One guard, and how the sources read when it is taken out. */
export interface Guard {
  readonly name: string;
  readonly file: string;
  readonly is: string;
  readonly without: string;
  readonly test: string;
}

export const of =
  (file: string, test: string) =>
  (name: string, is: string, without: string): Guard => ({ name, file, is, without, test });

const loopback = 'tests/electron/loopback-guard.test.ts';
const shell = 'tests/electron/shell.test.ts';
const server = of('electron/loopback/serve-loopback.ts', loopback);
const gate = of('electron/loopback/request-guard.ts', loopback);
const contained = of('electron/disk/contained-path.ts', loopback);
const policy = of('electron/host/content-security.ts', loopback);
const handler = of('electron/host/request-handler.ts', loopback);
const window = of('electron/shell/open-window.ts', shell);
const navigation = of('electron/shell/deny-navigation.ts', shell);
const permissions = of('electron/shell/deny-permissions.ts', shell);
const operations = of('electron/shell/handle-operations.ts', shell);
const bundle = of('electron/host/bundle/unpack-bundle.ts', 'tests/electron/bundle.test.ts');
const media = of('electron/media/run-media-tool.ts', 'tests/electron/media-tools.test.ts');
const upkeep = 'tests/electron/upkeep.test.ts';
const archive = of('electron/host/upkeep/read-archive.ts', upkeep);

export const securityGuards: readonly Guard[] = [
  server('bound to this machine', "hostname: '127.0.0.1'", "hostname: '0.0.0.0'"),
  server(
    'no websocket',
    'socket.destroy()',
    "socket.end('HTTP/1.1 101 Switching Protocols\\r\\nUpgrade: websocket\\r\\nConnection: Upgrade\\r\\n\\r\\n')",
  ),
  gate('Host must be our own', "return 'wrong-host'", "void 'wrong-host'"),
  gate(
    'Origin must be our own',
    'if (origin !== null && origin !==',
    'if (origin === undefined && origin !==',
  ),
  gate('Sec-Fetch-Site must be our own', "&& !opening) return 'cross-site'", '&& !opening) void 0'),
  gate('the key', "? 'ok' : 'no-token'", "? 'ok' : 'ok'"),
  gate(
    'the whole key is compared',
    "same(mine.slice(mine.indexOf('=') + 1), token)",
    "token.startsWith(mine.slice(mine.indexOf('=') + 1))",
  ),
  gate('the start code is good once', '      startCode = null;\n', ''),
  gate('the cookie is out of scripts’ reach', 'HttpOnly; ', ''),
  gate('the cookie is for our own pages', 'SameSite=Strict; ', ''),
  contained('a name is one plain name', '  if (!isPlainName(name)) return null;\n', ''),
  contained('no way out by a link', 'real === target ? target : null', 'target'),
  contained('no Windows device', '/[. ]$/.test(name) && !deviceName.test(name)', '/[. ]$/.test(name)'),
  policy('no inline script', "script-src 'self'", "script-src 'self' 'unsafe-inline'"),
  policy('nothing that is not named', "default-src 'none'", "default-src 'self'"),
  policy('no other origin', "connect-src 'self'", 'connect-src *'),
  policy('workers are our own files', "worker-src 'self'", "worker-src 'self' blob:"),
  policy('no base', '  "base-uri \'none\'",\n', ''),
  policy('no form leaves', '  "form-action \'none\'",\n', ''),
  policy('in no frame', '  "frame-ancestors \'none\'",\n', ''),
  policy('types are not guessed', "  'X-Content-Type-Options': 'nosniff',\n", ''),
  policy('no address goes along', "  'Referrer-Policy': 'no-referrer',\n", ''),
  policy('the window is isolated', "  'Cross-Origin-Opener-Policy': 'same-origin',\n", ''),
  policy('we embed nobody’s files', "  'Cross-Origin-Embedder-Policy': 'require-corp',\n", ''),
  policy('no camera, microphone or place', 'camera=(), microphone=(), ', ''),
  policy('nobody embeds our files', "  'Cross-Origin-Resource-Policy': 'same-origin',\n", ''),
  policy('nothing is left in the browser’s cache', "  'Cache-Control': 'no-store',\n", ''),
  handler(
    'no endless body',
    "  if (Number(request.headers.get('Content-Length') ?? 0) > limit) return null;\n",
    '',
  ),
  handler('a thumbnail is a JPEG', 'bytes[0] !== 0xff || bytes[1] !== 0xd8', 'false'),
  window('context isolation', 'contextIsolation: true', 'contextIsolation: false'),
  window('the sandbox', 'sandbox: true', 'sandbox: false'),
  window('no Node.js in the page', 'nodeIntegration: false', 'nodeIntegration: true'),
  window('no Node.js in its workers', 'nodeIntegrationInWorker: false', 'nodeIntegrationInWorker: true'),
  window('web security', 'webSecurity: true', 'webSecurity: false'),
  window('no insecure content', 'allowRunningInsecureContent: false', 'allowRunningInsecureContent: true'),
  window('no webview', 'webviewTag: false', 'webviewTag: true'),
  navigation('no navigation', "  contents.on('will-navigate', (event) => event.preventDefault());\n", ''),
  navigation('no redirect', "  contents.on('will-redirect', (event) => event.preventDefault());\n", ''),
  navigation(
    'no navigation of a frame',
    "  contents.on('will-frame-navigate', (event) => event.preventDefault());\n",
    '',
  ),
  navigation(
    'no webview attached',
    "  contents.on('will-attach-webview', (event) => event.preventDefault());\n",
    '',
  ),
  navigation('no new window', "action: 'deny'", "action: 'allow'"),
  permissions(
    'no permission asked for but the clipboard',
    'answer(granted(permission, details?.requestingUrl))',
    'answer(true)',
  ),
  permissions('no permission assumed', 'granted(permission, origin));', 'true);'),
  permissions('the clipboard is for our own page', '&& isOurs(from)', ''),
  operations('only our page asks', '&& frame.url.startsWith(', '|| frame.url.startsWith('),
  operations('only its main frame asks', 'frame.parent === null', 'true'),
  of('electron/shell/app-protocol.ts', shell)(
    'one host under our scheme',
    "host !== 'app'",
    "host === 'none'",
  ),
  of('electron/shell/app-protocol.ts', shell)(
    'no privilege of our scheme that isn’t needed',
    'stream: true }',
    'stream: true, bypassCSP: true }',
  ),
  of('electron/shell/preload.ts', shell)(
    'two functions for the page',
    "contextBridge.exposeInMainWorld('submarkHost', {",
    "contextBridge.exposeInMainWorld('submarkHost', { all: ipcRenderer.invoke,",
  ),
  of('electron/packaging.mjs', 'tests/electron/packaging.test.ts')(
    'the fuses',
    'runAsNode: false',
    'runAsNode: true',
  ),
  of('electron/host/create-host.ts', 'tests/electron/fuzz.test.ts')(
    'input is checked against the contract',
    'const checked = operation.input.safeParse(input);',
    'const checked = { success: true as const, data: input, error: null as never };',
  ),
  bundle(
    'a bundle holds what its manifest names',
    "return damaged(hostJobsWords('holdsFilesIts'))",
    'void 0',
  ),
  bundle('a bundle’s bytes are those packed', "hash.digest('hex') !== said.sha256", 'false'),
  bundle('no link in a bundle', "return damaged(hostJobsWords('holdsSomethingNo'))", 'void 0'),
  bundle('no bomb in a bundle', 'bytes > entry.compressedSize * ratioLimit', 'false'),
  bundle('a bundle’s film is the marks’ own', "return damaged(hostJobsWords('itsClipNotOne'))", 'void 0'),
  archive('a back-up’s bytes are those packed', 'found.bytes !== bytes || found.sha256 !== sha256', 'false'),
  of('electron/host/upkeep/restore-library.ts', upkeep)(
    'no archive larger than the disk',
    'needed > (await room(part))',
    'false',
  ),
  of('electron/host/upkeep/restore-library.ts', upkeep)(
    'no way out of a back-up',
    'const parts = partsInside(name);',
    "const parts = name.split('/');",
  ),
  of('electron/host/upkeep/parts-inside.ts', upkeep)('no step up in a back-up', " && part !== '..'", ''),
  of('electron/host/upkeep/parts-inside.ts', upkeep)(
    'no Windows device or stream in a back-up',
    '(!windows || isPlainName(part))',
    'true',
  ),
  of('electron/commands/audit.mjs', 'tests/electron/audit.test.ts')(
    'a known weakness fails the check',
    'process.exit(1)',
    'void 0',
  ),
  media('media tools open no network', "'-protocol_whitelist', 'file,pipe', ", ''),
  media('media tools end in time', '    timeout: timeoutMs,\n', ''),
  media('media tools end when they say too much', '    maxBuffer: maxOutput,\n', ''),
];
