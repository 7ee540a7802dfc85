/** Where things stand in dist/office, and what the manifest, the pages and the checks call them. */

/** Never changes: by it a program knows that a new version is the same add-in. */
export const ADDIN_ID = 'ed99205e-a72b-4a1b-85f3-4ea742d3f68d';

/** Where the add-in is served when a developer tries it. */
export const DEFAULT_BASE = 'https://localhost:3000';

export const FILES = {
  manifest: 'manifest.xml',
  pane: 'pane.html',
  support: 'support.html',
  message: 'message.html',
  script: 'functions.js',
  metadata: 'functions.json',
} as const;

/** Sizes of the mark in pixels; 16, 32 and 80 are required of a button, 32 and 64 of the add-in itself. */
export const ICON_SIZES = [16, 20, 24, 32, 40, 48, 64, 80] as const;

export const iconFile = (size: number): string => `icons/mark-${size}.png`;

/** The address of a file below the base. */
export const addressOf = (base: string, file: string): string => `${base}/${file}`;

/**
 * The base address as the build takes it: https, no slash at the end.
 *
 * @throws Error with a sentence where it is not such an address
 * @example baseAddress('https://roses.example/feed/') // 'https://roses.example/feed'
 */
export const baseAddress = (given: string): string => {
  const refuse = (): never => {
    throw new Error(`“${given}” cannot be the base address; give an https address, such as ${DEFAULT_BASE}.`);
  };
  if (!URL.canParse(given)) return refuse();
  const { protocol, search, hash, origin, pathname } = new URL(given);
  if (protocol !== 'https:' || search !== '' || hash !== '') return refuse();
  return origin + pathname.replace(/\/+$/, '');
};
