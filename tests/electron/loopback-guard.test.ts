import { mkdir, symlink, writeFile } from 'node:fs/promises';
import net from 'node:net';
import { networkInterfaces } from 'node:os';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { createRequestHandler } from '#electron/host/request-handler';
import { type LoopbackServer, serveLoopback } from '#electron/loopback/serve-loopback';
import { aHost, type HostUnderTest } from './a-host';
import { type Answer, type RawRequest, rawRequest } from './raw-request';

let under: HostUnderTest;
let server: LoopbackServer;
let cookie: string;
let spentCode: string;

const raw = (target: string, how?: RawRequest): Promise<Answer> => rawRequest(server.port, target, how);
const mine = (headers: object = {}): object => ({ Cookie: cookie, ...headers });
const openLibrary = (headers: object): Promise<Answer> =>
  raw('/op/library/open', { method: 'POST', body: '{}', headers });

beforeAll(async () => {
  under = await aHost();
  await under.addSwim();
  const app = path.join(path.dirname(under.library), 'app');
  await mkdir(path.join(app, 'assets'), { recursive: true });
  await writeFile(path.join(app, 'index.html'), '<!doctype html>app');
  await writeFile(path.join(app, 'assets', 'app.js'), '1');
  await writeFile(path.join(path.dirname(under.library), 'secret.json'), 'SECRET');
  await symlink(path.join(path.dirname(under.library), 'secret.json'), path.join(app, 'assets', 'link.json'));
  // on Windows this name is a device wherever it stands
  await writeFile(path.join(app, 'assets', 'aux.js'), 'SECRET');
  server = await serveLoopback(createRequestHandler(under.host, app), 0);
  const start = new URL(server.startAddress);
  spentCode = start.pathname;
  const exchanged = await raw(start.pathname);
  cookie = String(exchanged.headers['set-cookie']?.[0]).split(';')[0] ?? '';
  expect(exchanged).toMatchObject({ status: 303, headers: { location: '/' } });
  expect(exchanged.headers['set-cookie']?.[0]).toMatch(/HttpOnly; SameSite=Strict; Path=\/$/);
});
afterAll(async () => {
  await server.close();
  await under.close();
});

describe('the loopback server', () => {
  it('listens on 127.0.0.1 only', async () => {
    const others = Object.values(networkInterfaces())
      .flatMap((each) => each ?? [])
      .filter((each) => each.family === 'IPv4' && !each.internal)
      .map((each) => each.address);
    for (const address of ['127.0.0.2', ...others]) {
      const connected = await new Promise<boolean>((resolve) => {
        const socket = net.connect({ host: address, port: server.port, timeout: 2000 });
        socket.on('connect', () => resolve(true));
        socket.on('error', () => resolve(false));
        socket.on('timeout', () => resolve(false));
      });
      expect([address, connected]).toEqual([address, false]);
    }
  });

  it('answers its own page', async () => {
    const own = mine({ Origin: `http://127.0.0.1:${server.port}`, 'Sec-Fetch-Site': 'same-origin' });
    const answer = await openLibrary(own);
    expect(answer.status).toBe(200);
    expect(JSON.parse(answer.text)).toMatchObject({ ok: true, value: { swims: [{ id: 'swim-1' }] } });
  });

  it.each([
    ['another name re-pointed here', { Host: 'evil.example' }],
    ['another name with our port', () => ({ Host: `evil.example:${server.port}` })],
    ['localhost', () => ({ Host: `localhost:${server.port}` })],
    ['another port', { Host: '127.0.0.1:1' }],
    ['no port', { Host: '127.0.0.1' }],
  ])('refuses a Host of %s', async (_name, host) => {
    const headers = typeof host === 'function' ? host() : host;
    expect((await openLibrary(mine(headers))).status).toBe(403);
  });

  it.each([
    ['a foreign Origin', { Origin: 'https://evil.example' }],
    ['the null Origin', { Origin: 'null' }],
    ['another port’s Origin', { Origin: 'http://127.0.0.1:1' }],
    ['a cross-site fetch', { 'Sec-Fetch-Site': 'cross-site', 'Sec-Fetch-Mode': 'no-cors' }],
    ['a same-site fetch', { 'Sec-Fetch-Site': 'same-site', 'Sec-Fetch-Mode': 'cors' }],
    ['a cross-site form post', { 'Sec-Fetch-Site': 'cross-site', 'Sec-Fetch-Mode': 'navigate' }],
  ])('refuses %s even with the right cookie', async (_name, headers) => {
    const answer = await openLibrary(mine(headers));
    expect(answer.status).toBe(403);
    expect(answer.text).not.toContain('swim-1');
  });

  it.each([
    ['no cookie', {}],
    ['an empty one', () => ({ Cookie: `submark-${server.port}=` })],
    ['a wrong one', () => ({ Cookie: `submark-${server.port}=${'A'.repeat(43)}` })],
    ['a cut one', () => ({ Cookie: cookie.slice(0, -1) })],
    ['the start code as cookie', () => ({ Cookie: `submark-${server.port}=${spentCode.slice(6)}` })],
  ])('refuses %s', async (_name, given) => {
    const headers = typeof given === 'function' ? given() : given;
    expect((await openLibrary(headers)).status).toBe(403);
    expect((await raw('/', { headers })).status).toBe(403);
    expect((await raw('/stream/clip/swim-1', { headers })).status).toBe(403);
  });

  it('takes the start code once', async () => {
    const again = await raw(spentCode);
    expect(again.status).toBe(403);
    expect(again.headers['set-cookie']).toBeUndefined();
    expect((await raw('/open/wrong')).status).toBe(403);
  });

  it('opens no websocket', async () => {
    const answer = await new Promise<string>((resolve, reject) => {
      const socket = net.connect(server.port, '127.0.0.1', () =>
        socket.write(
          `GET / HTTP/1.1\r\nHost: 127.0.0.1:${server.port}\r\nCookie: ${cookie}\r\nUpgrade: websocket\r\nConnection: Upgrade\r\nSec-WebSocket-Key: dGhlIHNhbXBsZSBub25jZQ==\r\nSec-WebSocket-Version: 13\r\n\r\n`,
        ),
      );
      let text = '';
      socket.on('data', (part) => {
        text += part.toString('latin1');
      });
      socket.on('close', () => resolve(text));
      socket.on('error', reject);
    });
    expect(answer).not.toContain('101');
  });

  it('says nothing useful to one without the key, and grants no other origin', async () => {
    const answer = await raw('/', { headers: {} });
    expect(answer.headers['access-control-allow-origin']).toBeUndefined();
    expect(answer.headers['content-security-policy']).toContain("default-src 'none'");
  });
});

describe('files', () => {
  it('serves the built app with no inline script allowed and the window isolated', async () => {
    const answer = await raw('/', { headers: mine() });
    expect(answer.text).toBe('<!doctype html>app');
    const policy = String(answer.headers['content-security-policy']);
    const scripts = policy.split('; ').find((each) => each.startsWith('script-src'));
    expect(scripts).toBe("script-src 'self' 'wasm-unsafe-eval'");
    for (const directive of [
      "default-src 'none'",
      "base-uri 'none'",
      "form-action 'none'",
      "frame-ancestors 'none'",
      "worker-src 'self'",
    ])
      expect(policy.split('; ')).toContain(directive);
    // no directive but script's compiling of WebAssembly names more than the page itself and what it made
    expect(policy).not.toMatch(/https?:|\*|'unsafe-eval'|'unsafe-hashes'/);
    expect(answer.headers).toMatchObject({
      'cross-origin-opener-policy': 'same-origin',
      'cross-origin-embedder-policy': 'require-corp',
      'cross-origin-resource-policy': 'same-origin',
      'x-content-type-options': 'nosniff',
      // the address never goes along, and nothing is kept by the browser
      'referrer-policy': 'no-referrer',
      'cache-control': 'no-store',
      'permissions-policy': expect.stringContaining('camera=(), microphone=(), geolocation=()') as unknown,
    });
    expect((await raw('/assets/app.js', { headers: mine() })).headers['content-type']).toContain(
      'javascript',
    );
  });

  it.each([
    '/../secret.json',
    '/assets/../../secret.json',
    '/assets/..%2f..%2fsecret.json',
    '/%2e%2e/secret.json',
    '/assets/%2e%2e%2f%2e%2e%2fsecret.json',
    '/assets/..%5c..%5csecret.json',
    '/assets/%252e%252e%252fsecret.json',
    '/assets/link.json',
    '/assets/app.js%00.json',
    '/%00',
    '/assets/con.js',
    '/assets/aux.js',
    '/NUL',
    '/assets/',
    '/assets',
    '//secret.json',
    '/stream/clip/../../secret.json',
    '/stream/clip/..%2f..%2fsecret.json',
    '/stream/clip/%2e%2e',
    '/stream/thumbnail/..%2f..',
    '/stream/thumbnail/aux',
    '/stream/arrived/..%2fsecret.json',
    '/%ff%fe',
    '/%',
  ])('%s leads nowhere', async (target) => {
    const answer = await raw(target, { headers: mine() });
    expect(answer.text).not.toContain('SECRET');
    expect([400, 404]).toContain(answer.status);
  });
});

describe('the clip stream', () => {
  const clip = (range?: string): Promise<Answer> =>
    raw('/stream/clip/swim-1', { headers: mine(range ? { Range: range } : {}) });

  it('gives the whole clip, a part, an open end and a tail', async () => {
    expect(await clip()).toMatchObject({ status: 200, text: 'hello video' });
    expect(await clip('bytes=0-4')).toMatchObject({
      status: 206,
      text: 'hello',
      headers: { 'content-range': 'bytes 0-4/11', 'content-length': '5' },
    });
    expect(await clip('bytes=6-')).toMatchObject({ status: 206, text: 'video' });
    expect(await clip('bytes=-5')).toMatchObject({ status: 206, text: 'video' });
    expect(await clip('bytes=6-999')).toMatchObject({ status: 206, text: 'video' });
  });

  it('answers 416 to a range outside, and the whole to what is no range', async () => {
    for (const range of ['bytes=11-', 'bytes=5-4', 'bytes=-0'])
      expect(await clip(range)).toMatchObject({ status: 416, headers: { 'content-range': 'bytes */11' } });
    for (const range of ['bytes=-', 'lines=1-2', 'bytes=0-1,3-4', 'bytes=a-b'])
      expect(await clip(range)).toMatchObject({ status: 200, text: 'hello video' });
  });
});

describe('sending', () => {
  const put = async (target: string, body: string): Promise<unknown> =>
    JSON.parse((await raw(target, { method: 'PUT', headers: mine(), body })).text);

  it('takes a clip under a safe name, whatever name it is sent with', async () => {
    for (const [sent, kept] of [
      ['..%2f..%2fevil.mp4', 'evil.mp4'],
      ['C%3A%5Cfilms%5Cswim.mp4', 'swim.mp4'],
      ['con.mp4', '_con.mp4'],
      ['a%00b.mp4', 'a-b.mp4'],
    ])
      expect(await put(`/stream/arrive?name=${sent}`, 'film')).toMatchObject({
        ok: true,
        value: { name: kept, fingerprint: { bytes: 4 } },
      });
  });

  it('saves exports under free names, inside the export folder', async () => {
    const save = (): Promise<unknown> => put('/stream/export?name=..%2fstill.png', 'png');
    expect(await save()).toMatchObject({
      value: { name: 'still.png', path: path.join(under.library, 'exports', 'still.png') },
    });
    expect(await save()).toMatchObject({ value: { name: 'still 2.png' } });
  });

  it('takes only a JPEG as a thumbnail, only for a swim that is there', async () => {
    expect(await put('/stream/thumbnail/swim-1', 'not a jpeg')).toMatchObject({
      error: { code: 'bad-request' },
    });
    expect(await put('/stream/thumbnail/nobody', 'x')).toMatchObject({ error: { code: 'not-found' } });
    const jpeg = await fetch(`http://127.0.0.1:${server.port}/stream/thumbnail/swim-1`, {
      method: 'PUT',
      headers: { Cookie: cookie },
      body: new Uint8Array([0xff, 0xd8, 0xff, 0xd9]),
    });
    expect(await jpeg.json()).toEqual({ ok: true, value: null });
    expect((await raw('/stream/thumbnail/swim-1', { headers: mine() })).text).toBe('\xff\xd8\xff\xd9');
  });

  it('reads no body larger than an operation can be', async () => {
    const answer = await new Promise<string>((resolve, reject) => {
      const socket = net.connect(server.port, '127.0.0.1', () =>
        socket.write(
          `POST /op/swim/read HTTP/1.1\r\nHost: 127.0.0.1:${server.port}\r\nCookie: ${cookie}\r\nContent-Length: 99999999999\r\nConnection: close\r\n\r\n{`,
        ),
      );
      socket.setTimeout(30_000, () => socket.destroy(new Error('it waits for all of it')));
      socket.once('data', (part) => {
        resolve(part.toString('latin1'));
        socket.destroy();
      });
      socket.on('error', reject);
    });
    expect(answer).toContain('too-large');
  });

  it('answers a body that is no JSON with a typed error', async () => {
    const answer = await raw('/op/swim/read', { method: 'POST', headers: mine(), body: '{"id":' });
    expect(JSON.parse(answer.text)).toMatchObject({ error: { code: 'bad-request' } });
  });
});
