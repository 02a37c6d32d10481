import { afterEach, describe, expect, it, vi } from 'vitest';
import { success } from '#core/host-contract/host-error';
import type { HostClient } from '../../../renderer/host/host-client';
import { createStreamClient, type SentAs } from '../../../renderer/host/stream-client';

afterEach(() => vi.unstubAllGlobals());

/** Sends a file and gives what was handed to the network for it. */
async function sentAs(as: SentAs): Promise<RequestInit> {
  const sent: RequestInit[] = [];
  vi.stubGlobal('fetch', async (_address: string, init: RequestInit) => {
    sent.push(init);
    const clip = { clipId: 'c1', name: 'a.mp4', fingerprint: { bytes: 4, edgesSha256: 'a'.repeat(64) } };
    return Response.json(success(clip));
  });
  const call = (async () => success({ bytes: null })) as unknown as HostClient['call'];
  const file = new File(['film'], 'a.mp4');
  const { signal } = new AbortController();
  const answer = await createStreamClient(call, as).sendClip(file, file.name, {
    signal,
    onProgress: () => undefined,
  });
  expect(answer).toMatchObject({ ok: true, value: { clipId: 'c1' } });
  const [first] = sent;
  if (!first) throw new Error('nothing was sent');
  return first;
}

describe('a clip’s bytes', () => {
  it('go as a stream over Electron’s scheme, which would put a file together in memory, or wait for ever', async () => {
    const sent = await sentAs('stream');
    expect(sent).toMatchObject({ method: 'PUT', duplex: 'half' });
    expect(sent.body).toBeInstanceOf(ReadableStream);
    expect(await new Response(sent.body).text()).toBe('film');
  });

  it('go as they are over HTTP, which takes no stream', async () => {
    expect((await sentAs('blob')).body).toBeInstanceOf(File);
  });
});
