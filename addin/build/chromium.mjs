/** How Chromium is begun by builds and tests: by root too, without a graphics card, and asking nothing of the network. */
export const CHROMIUM = [
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];
