import { pngSize } from './pngSize';

/** The built package and where it is served. */
export interface Package {
  /** The address that it is served from, without a slash at the end. */
  readonly base: string;
  /** A built file by its path below the base. */
  readonly built: (path: string) => Uint8Array | undefined;
}

const LONGEST_ADDRESS = 2048;

const fileAt = (url: string, { base, built }: Package): Uint8Array | undefined =>
  url.startsWith(`${base}/`) ? built(url.slice(base.length + 1).replace(/[?#].*$/, '')) : undefined;

/** What is wrong with an address: not https, too long, elsewhere, or of no built file. */
export const addressFaults = (url: string, of: string, place: Package): string[] => {
  if (!url.startsWith('https://')) return [`The address of ${of} is not https.`];
  if (url.length > LONGEST_ADDRESS)
    return [`The address of ${of} has more than ${LONGEST_ADDRESS} characters.`];
  if (!url.startsWith(`${place.base}/`)) return [`The address of ${of} is not below ${place.base}.`];
  return fileAt(url, place) === undefined ? [`The address of ${of} names no built file.`] : [];
};

/** The same for an image, which must be a PNG as wide and as high as it is said to be. */
export const imageFaults = (url: string, size: number, of: string, place: Package): string[] => {
  const faults = addressFaults(url, of, place);
  const file = fileAt(url, place);
  if (faults.length > 0 || file === undefined) return faults;
  const found = pngSize(file);
  if (found === undefined) return [`The image of ${of} is not a PNG.`];
  return found.width === size && found.height === size
    ? []
    : [`The image of ${of} is ${found.width} × ${found.height} pixels and not ${size} × ${size}.`];
};
