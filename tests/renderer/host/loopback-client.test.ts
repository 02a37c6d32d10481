import { afterAll, afterEach, beforeAll, describe, expect, it, vi } from 'vitest';
import { createRequestHandler } from '#electron/host/request-handler';
import { aHost, type HostUnderTest } from '#tests/electron/a-host';
import { createLoopbackClient } from '../../../renderer/host/loopback-client';

let under: HostUnderTest;
beforeAll(async () => {
  under = await aHost();
  await under.addSwim();
});
afterAll(() => under.close());
afterEach(() => vi.unstubAllGlobals());

/** The real host behind the client's fetch: what a page has, without a page. */
function connect(): void {
  const handler = createRequestHandler(under.host, under.library);
  vi.stubGlobal('fetch', (address: string, init: RequestInit) =>
    handler(new Request(new URL(address, 'http://127.0.0.1'), init)),
  );
}

describe('the window’s client over HTTP', () => {
  const client = createLoopbackClient();

  it('reads and writes a swim through the contract', async () => {
    connect();
    const read = await client.call('swim/read', { id: 'swim-1' });
    if (!read.ok) throw new Error(read.error.code);
    const swim = { ...read.value.swim, card: { ...read.value.swim.card, note: 'from the window' } };
    const written = await client.call('swim/write', { swim, baseRevision: read.value.revision });
    expect(written.ok && written.value.revision).not.toBe(read.value.revision);
    const again = await client.call('swim/read', { id: 'swim-1' });
    expect(again.ok && again.value.swim.card.note).toBe('from the window');
    expect(await client.call('swim/write', { swim, baseRevision: 'e'.repeat(64) })).toMatchObject({
      ok: true,
      // the very same text needs no writing, whatever it was based on
      value: { revision: again.ok ? again.value.revision : '' },
    });
  });

  it('saves an export and a thumbnail', async () => {
    connect();
    expect(await client.sendExport('still.png', new Blob(['png']))).toMatchObject({
      ok: true,
      value: { name: 'still.png' },
    });
    const jpeg = new Blob([new Uint8Array([0xff, 0xd8, 0xff, 0xd9])]);
    expect(await client.sendThumbnail('swim-1', jpeg)).toEqual({ ok: true, value: null });
  });

  it('throws on input the contract does not know, before anything is sent', async () => {
    const sent = vi.fn();
    vi.stubGlobal('fetch', sent);
    await expect(client.call('swim/read', { id: '../x' })).rejects.toThrow();
    expect(sent).not.toHaveBeenCalled();
  });

  it('throws on an answer of another shape: that is a bug, not a failure', async () => {
    vi.stubGlobal('fetch', async () => Response.json({ ok: true, value: { surprise: 1 } }));
    await expect(client.call('swim/remove', { id: 'a' })).rejects.toThrow();
  });

  it('says when the host is gone, shut the door, or the call was taken back', async () => {
    vi.stubGlobal('fetch', () => Promise.reject(new TypeError('fetch failed')));
    expect(await client.call('library/open', {})).toMatchObject({ error: { code: 'host-unreachable' } });
    vi.stubGlobal('fetch', async () => new Response('no', { status: 403 }));
    expect(await client.call('library/open', {})).toMatchObject({ error: { code: 'not-allowed' } });
    vi.stubGlobal('fetch', async (_address: string, init: RequestInit) => {
      init.signal?.throwIfAborted();
      return Response.json({});
    });
    expect(await client.call('library/open', {}, AbortSignal.abort())).toMatchObject({
      error: { code: 'cancelled' },
    });
  });

  it('says so, too, when the answer is given up or cut off while it still arrives', async () => {
    const leaving = new AbortController();
    // the head of the answer has come, its body fails as a browser's does
    const arriving = (error: Error) => async () => {
      const body = new ReadableStream({ start: (stream) => stream.error(error) });
      return new Response(body, { headers: { 'Content-Type': 'application/json' } });
    };
    leaving.abort();
    vi.stubGlobal('fetch', arriving(leaving.signal.reason));
    expect(await client.call('library/open', {}, leaving.signal)).toMatchObject({
      error: { code: 'cancelled' },
    });
    vi.stubGlobal('fetch', arriving(new TypeError('terminated')));
    expect(await client.call('library/open', {})).toMatchObject({ error: { code: 'host-unreachable' } });
  });
});
