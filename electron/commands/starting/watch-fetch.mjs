// Loaded before Electron's own installer, in its process: tells the start command what the download is doing. The
// installer itself stays as it is, with its checksum, cache, mirrors and proxy.

/** Bytes are told at most this often; the start command only needs to know that some came. */
const everyMs = 200;

/** A fetch that does what the given one does, and tells how far it has come. */
export function watchedFetch(fetch, tell) {
  return async (...request) => {
    tell({ doing: 'asked' });
    let answer;
    try {
      answer = await fetch(...request);
    } catch (error) {
      tell({ doing: 'unreachable', fault: error.cause?.code ?? error.code });
      throw error;
    }
    if (!answer.ok || !answer.body) {
      tell({ doing: 'refused', status: answer.status });
      return answer;
    }
    const total = Number(answer.headers.get('content-length')) || null;
    tell({ doing: 'receiving', received: 0, total });
    return new Response(ReadableStream.from(counted(answer.body, total, tell)), {
      status: answer.status,
      headers: answer.headers,
    });
  };
}

async function* counted(body, total, tell) {
  let received = 0;
  let told = performance.now();
  try {
    for await (const chunk of body) {
      received += chunk.length;
      if (performance.now() - told >= everyMs) {
        told = performance.now();
        tell({ doing: 'receiving', received, total });
      }
      yield chunk;
    }
  } catch (error) {
    tell({ doing: 'cut', fault: error.cause?.code ?? error.code });
    throw error;
  }
  tell({ doing: 'received', received, total });
}

if (process.send) {
  globalThis.fetch = watchedFetch(globalThis.fetch, (message) => process.send?.(message));
  // nobody waits for a download whose start command has gone
  process.once('disconnect', () => process.exit(1));
  process.channel?.unref();
}
