import { readFileSync, readdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';

/** What shrinks; spreadsheet files and pictures are packed already. */
const TEXTS = /\.(?:js|css|html|txt)$/;

/** Puts a compressed copy beside each text of a folder, for servers that hand those out. */
export const compressTexts = (folder) => {
  for (const name of readdirSync(folder).filter((file) => TEXTS.test(file)))
    writeFileSync(join(folder, `${name}.gz`), gzipSync(readFileSync(join(folder, name)), { level: 9 }));
};
