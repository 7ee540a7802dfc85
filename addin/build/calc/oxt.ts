import { strToU8, zipSync, type Zippable } from 'fflate';

/** Zip files count from 1980; the same hour everywhere, so that the same sources give the same bytes. */
const STAMP = new Date(1980, 0, 1);

/** Files of the package by path; text is UTF-8. */
export type PackageFiles = Readonly<Record<string, string | Uint8Array>>;

/** Paths of programs, which must stay runnable on macOS and Linux. */
export type Programs = readonly string[];

const UNIX = 3;
const RUNNABLE = 0o100755 << 16;
const READABLE = 0o100644 << 16;

/** The package as bytes: entries in the order of their names, one time stamp. */
export const zipped = (files: PackageFiles, programs: Programs = []): Uint8Array => {
  const entries: Zippable = {};
  for (const path of Object.keys(files).sort()) {
    const content = files[path]!;
    entries[path] = [
      typeof content === 'string' ? strToU8(content) : content,
      { os: UNIX, attrs: programs.includes(path) ? RUNNABLE : READABLE },
    ];
  }
  return zipSync(entries, { level: 9, mtime: STAMP });
};
