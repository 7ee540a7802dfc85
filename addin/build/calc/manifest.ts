import { document, element } from '../xml';

const NAMESPACE = 'http://openoffice.org/2001/manifest';

/** What LibreOffice is to do with a file of the package. */
export const MEDIA = {
  types: 'application/vnd.sun.star.uno-typelibrary;type=RDB',
  python: 'application/vnd.sun.star.uno-component;type=Python',
  registry: 'application/vnd.sun.star.configuration-data',
} as const;

/** The package's manifest: the files that LibreOffice registers, in that order. */
export const manifest = (entries: readonly (readonly [path: string, media: string])[]): string =>
  document(
    element(
      'manifest:manifest',
      { 'xmlns:manifest': NAMESPACE },
      ...entries.map(([path, media]) =>
        element('manifest:file-entry', { 'manifest:full-path': path, 'manifest:media-type': media }),
      ),
    ),
  );
