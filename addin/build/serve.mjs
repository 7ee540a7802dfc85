import { createServer } from 'node:http';

/** Scripts come from the page's own origin and nothing leaves it. Styles are set from code, by the grid too. */
export const CONTENT_SECURITY_POLICY = [
  "default-src 'none'",
  "script-src 'self'",
  "style-src 'self' 'unsafe-inline'",
  "img-src 'self' data: blob:",
  "font-src 'self' data:",
  "connect-src 'self'",
  "worker-src 'self'",
  "base-uri 'none'",
  "form-action 'none'",
  "frame-ancestors 'none'",
].join('; ');

const HEADERS = {
  'Content-Security-Policy': CONTENT_SECURITY_POLICY,
  'X-Content-Type-Options': 'nosniff',
  'Referrer-Policy': 'no-referrer',
  'Cache-Control': 'no-cache',
  Vary: 'Accept-Encoding',
};

const LOOPBACK = /^(localhost|127\.0\.0\.1|\[::1\])(:\d+)?$/;
const TRIES = 20;

const listen = (server, port) =>
  new Promise((resolve, reject) => {
    server.once('error', reject);
    server.listen(port, '127.0.0.1', () => resolve(server.address().port));
  });

/**
 * Serves a folder on loopback only, at `port` or the next free one.
 * A request under another host name is refused, so that no outside page can reach in by a name of its own.
 *
 * @param heard hears every request
 */
export const serve = async (folder, port, heard = () => undefined) => {
  const { default: sirv } = await import('sirv');
  const files = sirv(folder, {
    dev: true,
    // Where a compressed copy stands beside a file.
    gzip: true,
    setHeaders: (response) =>
      Object.entries(HEADERS).forEach(([name, value]) => response.setHeader(name, value)),
  });
  const answer = (request, response) => {
    heard(request);
    if (!LOOPBACK.test(request.headers.host ?? '')) {
      response.writeHead(403).end('Wandcount answers on this machine only.');
      return;
    }
    files(request, response, () => response.writeHead(404, HEADERS).end('There is no such page here.'));
  };
  for (let offset = 0; offset < TRIES; offset += 1) {
    const server = createServer(answer);
    try {
      const chosen = await listen(server, port === 0 ? 0 : port + offset);
      return { address: `http://localhost:${chosen}/`, close: () => server.close() };
    } catch (error) {
      if (error.code !== 'EADDRINUSE') throw error;
    }
  }
  throw new Error(
    `Ports ${port} to ${port + TRIES - 1} are all in use. Close a program that serves there, or set PORT.`,
  );
};
