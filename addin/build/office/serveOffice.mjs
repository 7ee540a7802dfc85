import { readFileSync } from 'node:fs';
import { createServer } from 'node:https';

const HEADERS = {
  // The program's own page, from another origin, fetches the functions' description and the icons.
  'Access-Control-Allow-Origin': '*',
  'X-Content-Type-Options': 'nosniff',
  // Icons may be kept, or the ribbon does not show them.
  'Cache-Control': 'max-age=0, must-revalidate',
};

const secrets = (files) => ({
  ca: readFileSync(files.ca),
  cert: readFileSync(files.cert),
  key: readFileSync(files.key),
});

const LOOPBACK = /^(localhost|127\.0\.0\.1)(:\d+)?$/;

const listen = (server, port) =>
  new Promise((resolve, reject) => {
    server.once('error', (error) =>
      reject(
        error.code === 'EADDRINUSE'
          ? new Error(`Port ${port} is in use. Close what serves there, or give another with --port.`)
          : error,
      ),
    );
    server.listen(port, '127.0.0.1', () => resolve(server.address().port));
  });

/**
 * Serves a folder over https, to this machine only.
 *
 * @param files the certificates, as `ensureCertificates` gives them
 */
export const serveOffice = async (folder, port, files) => {
  const { default: sirv } = await import('sirv');
  const answer = sirv(folder, {
    dev: true,
    setHeaders: (response) =>
      Object.entries(HEADERS).forEach(([name, value]) => response.setHeader(name, value)),
  });
  const server = createServer(secrets(files), (request, response) => {
    if (!LOOPBACK.test(request.headers.host ?? '')) {
      response.writeHead(403).end('Wandcount answers on this machine only.');
      return;
    }
    answer(request, response, () => response.writeHead(404, HEADERS).end('There is no such page here.'));
  });
  const chosen = await listen(server, port);
  return {
    port: chosen,
    address: `https://localhost:${chosen}/`,
    /** Shows other certificates from now on, without a pause. */
    show: (renewed) => server.setSecureContext(secrets(renewed)),
    close: () => new Promise((resolve) => server.close(resolve)),
  };
};
