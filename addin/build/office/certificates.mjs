import { X509Certificate } from 'node:crypto';
import { chmodSync, existsSync, readFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';

import { root } from '../paths.mjs';

/** Kept out of the repository. */
export const certificatesFolder = join(root, '.certificates');

const DAYS = 365;
const DAY = 24 * 60 * 60 * 1000;
/** Renewed this long before they run out, days. */
const MARGIN = 14;

const filesIn = (folder) => ({
  ca: join(folder, 'ca.crt'),
  cert: join(folder, 'localhost.crt'),
  key: join(folder, 'localhost.key'),
});

const lastsUntil = (file) => Date.parse(new X509Certificate(readFileSync(file)).validTo);

/** True where all three files are there and both certificates last for some time yet. */
const areGood = (files, now) => {
  if (!Object.values(files).every((file) => existsSync(file))) return false;
  try {
    return [files.ca, files.cert].every((file) => lastsUntil(file) - now > MARGIN * DAY);
  } catch {
    // Something else in their place is as good as nothing.
    return false;
  }
};

/**
 * Makes sure that there are certificates for https on this machine, which need no rights to make. A new set has a new
 * authority, so whoever trusted the old one must trust it anew.
 *
 * @returns the files, and whether they are new
 */
export const ensureCertificates = async (
  folder = certificatesFolder,
  { days = DAYS, now = Date.now() } = {},
) => {
  const files = filesIn(folder);
  if (areGood(files, now)) return { files, isNew: false };
  // The maker writes nothing over what is there.
  for (const file of Object.values(files)) rmSync(file, { force: true });
  const { generateCertificates } = await import('office-addin-dev-certs');
  const log = console.log;
  console.log = () => {};
  try {
    await generateCertificates(files.ca, files.cert, files.key, days, ['127.0.0.1', 'localhost']);
  } finally {
    console.log = log;
  }
  chmodSync(files.key, 0o600);
  return { files, isNew: true };
};

/**
 * Looks once a day whether the certificates run out soon, and has new ones shown where they do, for a server that
 * runs longer than they last.
 *
 * @param show    takes the new files
 * @param failed  is told why they could not be made; it is tried again the next day
 * @param options `every` and `now` in ms, for another clock than the machine's
 * @returns a function that ends it
 */
export const renewWhileServing = (
  show,
  failed,
  { folder = certificatesFolder, days = DAYS, every = DAY, now = () => Date.now() } = {},
) => {
  let busy = false;
  const look = async () => {
    if (busy) return;
    busy = true;
    try {
      const { files, isNew } = await ensureCertificates(folder, { days, now: now() });
      if (isNew) show(files);
    } catch (error) {
      failed(error);
    } finally {
      busy = false;
    }
  };
  const timer = setInterval(() => void look(), every);
  timer.unref();
  return () => clearInterval(timer);
};
