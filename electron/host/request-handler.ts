import path from 'node:path';
import { type Context, Hono } from 'hono';
import { failure, success } from '#core/host-contract/host-error';
import { streamPaths } from '#core/host-contract/operations';
import { idSchema } from '#core/swim-file/swim-schema';
import { letterFile } from '../export/more-letters';
import { containedPath } from '../disk/contained-path';
import { securityHeaders } from './content-security';
import type { Host } from './create-host';
import { fileFailure } from '../disk/file-errors';
import { fileResponse } from './file-response';
import { saveUnderFreeName } from '../disk/free-name';

const types: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.woff2': 'font/woff2',
  '.ttf': 'font/ttf',
  '.wasm': 'application/wasm',
  '.json': 'application/json',
  // weights of the networks that see the swimmer
  '.tflite': 'application/octet-stream',
};
const operationLimit = 64 * 1024 * 1024;
const pictureLimit = 256 * 1024 * 1024;

/** Bytes of a body up to a limit, or null when it is longer: nothing unbounded is held in memory. */
async function bytesUpTo(request: Request, limit: number): Promise<Uint8Array | null> {
  if (Number(request.headers.get('Content-Length') ?? 0) > limit) return null;
  const parts: Uint8Array[] = [];
  let size = 0;
  const reader = request.body?.getReader();
  while (reader) {
    const { done, value } = await reader.read();
    if (done) break;
    size += value.byteLength;
    if (size > limit) {
      await reader.cancel();
      return null;
    }
    parts.push(value);
  }
  return Buffer.concat(parts);
}

/** As `containedPath`, and null when the folder is not there either. */
async function presentPath(folder: string, name: string): Promise<string | null> {
  return containedPath(folder, name).catch((error: NodeJS.ErrnoException) => {
    if (error.code === 'ENOENT') return null;
    throw error;
  });
}

/**
 * Everything the app's origin answers, as one web-standard handler: operations, byte streams and the app's own files.
 * The loopback server and Electron's protocol both call it. Who may ask is decided before it is called.
 */
export function createRequestHandler(host: Host, appFolder: string): (request: Request) => Promise<Response> {
  const app = new Hono();
  app.use(async (context, next) => {
    await next();
    for (const [name, value] of Object.entries(securityHeaders)) context.res.headers.set(name, value);
  });
  app.onError((error, context) => {
    console.error(error);
    return context.json({ bug: 'the host failed; see its log' }, 500);
  });

  app.post('/op/*', async (context) => {
    const name = context.req.path.slice('/op/'.length);
    const body = await bytesUpTo(context.req.raw, operationLimit);
    if (!body) return context.json(failure('too-large', { name }));
    let input: unknown;
    try {
      input = JSON.parse(Buffer.from(body).toString('utf8'));
    } catch (error) {
      if (!(error instanceof SyntaxError)) throw error;
      return context.json(failure('bad-request', { name, what: 'not JSON' }));
    }
    return context.json(await host.run(name, input));
  });

  const clipOf = async (context: Context): Promise<Response> => {
    const id = idSchema.safeParse(context.req.param('id'));
    const file = id.success ? await host.shelf.presentClip(id.data) : null;
    if (!file) return context.text('not there', 404);
    return fileResponse(file, 'application/octet-stream', context.req.header('Range'));
  };
  app.get('/stream/clip/:id', clipOf);

  app.get('/stream/copy/:id', async (context) => {
    const id = idSchema.safeParse(context.req.param('id'));
    const file = id.success ? await host.copies.fileOf(id.data) : null;
    if (!file) return context.text('not there', 404);
    return fileResponse(file, 'application/octet-stream', context.req.header('Range'));
  });

  app.get('/stream/copy/:id/:first', async (context) => {
    const id = idSchema.safeParse(context.req.param('id'));
    const file = id.success ? host.copies.pieceOf(id.data, Number(context.req.param('first'))) : null;
    if (!file) return context.text('not there', 404);
    return fileResponse(file, 'application/octet-stream', context.req.header('Range'));
  });

  app.get('/stream/arrived/:id', async (context) => {
    const file = host.clips.fileOf(context.req.param('id'));
    if (!file) return context.text('not there', 404);
    return fileResponse(file, 'application/octet-stream', context.req.header('Range'));
  });

  app.put('/stream/arrive', async (context) => {
    const name = context.req.query('name') ?? '';
    if (name.length === 0 || name.length > 255) return context.json(failure('bad-request', { name }));
    const as = idSchema.safeParse(context.req.query('as'));
    return context.json(
      await host.clips.arrive(name, context.req.raw.body, as.success ? as.data : undefined),
    );
  });

  app.put(streamPaths.bundle, async (context) =>
    context.json(await host.bundles.arrive(context.req.raw.body)),
  );

  answerThumbnails(app, host);

  app.put('/stream/export', async (context) => {
    const name = context.req.query('name') ?? '';
    if (name.length === 0 || name.length > 255) return context.json(failure('bad-request', { name }));
    const { body } = context.req.raw;
    return context.json(await saveUnderFreeName(host.folder.exports, name, body, pictureLimit));
  });

  app.get('/stream/letters', async (context) => {
    const words = context.req.query('for') ?? '';
    const file = words.length <= 400 ? await letterFile(words) : null;
    return file ? fileResponse(file, 'font/woff2', undefined) : context.text('not there', 404);
  });

  // a copy for a window that is not on the library's own machine, or of a file only the host has made
  app.get('/stream/export', async (context) => {
    const name = context.req.query('name') ?? '';
    const wanted = name !== '' && !name.startsWith('.') && name.length <= 255;
    const file = wanted ? await presentPath(host.folder.exports, name) : null;
    if (!file) return context.text('not there', 404);
    const answer = await fileResponse(file, 'application/octet-stream', context.req.header('Range'));
    answer.headers.set('Content-Disposition', `attachment; filename*=UTF-8''${encodeURIComponent(name)}`);
    return answer;
  });

  answerOwnFiles(app, appFolder);

  return async (request) => app.fetch(request);
}

function answerThumbnails(app: Hono, host: Host): void {
  const thumbnailFile = async (id: string): Promise<string | null> => {
    if (!idSchema.safeParse(id).success) return null;
    return presentPath(host.shelf.folderOf(id), 'thumb.jpg');
  };
  app.get('/stream/thumbnail/:id', async (context) => {
    const file = await thumbnailFile(context.req.param('id'));
    return file ? fileResponse(file, 'image/jpeg', undefined) : context.text('not there', 404);
  });
  app.put('/stream/thumbnail/:id', async (context) => {
    const id = context.req.param('id');
    const file = await thumbnailFile(id);
    if (!file) return context.json(failure('not-found', { name: id }));
    const bytes = await bytesUpTo(context.req.raw, 4 * 1024 * 1024);
    if (!bytes) return context.json(failure('too-large', { name: id }));
    if (bytes[0] !== 0xff || bytes[1] !== 0xd8)
      return context.json(failure('bad-request', { name: id, what: 'not a JPEG' }));
    try {
      await host.shelf.writeThumbnail(file, bytes);
    } catch (error) {
      return context.json(fileFailure(error, id, 'writing'));
    }
    return context.json(success(null));
  });
}

/** The built app. */
function answerOwnFiles(app: Hono, appFolder: string): void {
  app.get('*', async (context) => {
    const asked = context.req.path === '/' ? 'index.html' : context.req.path.slice(1);
    const parts = asked.split('/');
    const name = parts.pop() ?? '';
    // the built app is two levels deep at most: index.html and assets/
    if (parts.length > 1 || (parts.length === 1 && parts[0] !== 'assets'))
      return context.text('not there', 404);
    const file = await presentPath(path.join(appFolder, ...parts), name);
    const type = types[path.extname(name)];
    if (!file || !type) return context.text('not there', 404);
    return fileResponse(file, type, undefined);
  });
}
