import { parseArgs } from 'node:util';
import { join, relative } from 'node:path';

import { ensurePackages } from '../dependencies.mjs';
import { root } from '../paths.mjs';

/** `npm run start:office`: builds the add-in for this machine and serves it over https until it is stopped. */

const trust = (
  ca,
) => `To trust the certificate, once on each machine (no rights needed to make it, yours to trust it):
  Windows   certutil -user -addstore Root ${ca}
  macOS     security add-trusted-cert -r trustRoot -k ~/Library/Keychains/login.keychain-db ${ca}
  Linux     certutil -d sql:$HOME/.pki/nssdb -A -t C,, -n wandcount -i ${ca}
            (Chromium; the command is in libnss3-tools. Firefox: Settings, Certificates, Authorities, Import.)`;

const load = (manifest) => `To load the add-in:
  in a browser   Home, Add-ins, More Add-ins, Upload My Add-in, and choose ${manifest}
  on Windows     share the folder of that file, add it under Trust Center, Trusted Add-in Catalogs, then
                 Home, Add-ins, Shared Folder
  on macOS       copy that file to ~/Library/Containers/com.microsoft.Excel/Data/Documents/wef`;

try {
  const { values } = parseArgs({ options: { port: { type: 'string', default: '3000' } } });
  const port = Number(values.port);
  if (!Number.isInteger(port) || port < 1 || port > 65_535)
    throw new Error(`“${values.port}” is not a port; give a whole number from 1 to 65535.`);
  ensurePackages();
  const { buildOffice, officeFolder } = await import('./buildOffice.mjs');
  const { ensureCertificates, renewWhileServing } = await import('./certificates.mjs');
  const { serveOffice } = await import('./serveOffice.mjs');
  const { files, isNew } = await ensureCertificates();
  console.log('Building the add-in …');
  await buildOffice(`https://localhost:${port}`);
  const { address, show } = await serveOffice(officeFolder, port, files);
  const near = (path) => relative(root, path);
  renewWhileServing(
    (renewed) => {
      show(renewed);
      console.log(`\nThe certificates ran out soon, so there are new ones.\n${trust(near(renewed.ca))}`);
    },
    (error) => console.error(`\nThe certificates could not be renewed: ${error.message}`),
  );
  if (isNew)
    console.log('\nMade new certificates, good for a year; they are renewed two weeks before they run out.');
  console.log(`\n${trust(near(files.ca))}\n\n${load(near(join(officeFolder, 'manifest.xml')))}`);
  console.log(`\nWandcount is served at ${address}\nStop with Ctrl+C.`);
} catch (error) {
  console.error(`\n${error.message}`);
  process.exitCode = 1;
}
