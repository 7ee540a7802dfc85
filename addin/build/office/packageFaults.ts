import { RIBBON } from '../../hosts/office/ribbon';

import { manifestFaults } from './checkManifest';
import { metadataFaults } from './checkMetadata';
import { FILES } from './package';
import { takenNames } from './takenNames';

/**
 * What is wrong with a built package, a sentence each.
 *
 * @param base  the address that it is served from
 * @param built a file of it by its path
 */
export const packageFaults = (base: string, built: (path: string) => Uint8Array | undefined): string[] => {
  const text = (path: string): string => new TextDecoder().decode(built(path) ?? new Uint8Array());
  const missing = Object.values(FILES).filter((path) => built(path) === undefined);
  return [
    ...missing.map((path) => `${path} is missing.`),
    ...manifestFaults(text(FILES.manifest), { base, built, actions: RIBBON.map(({ id }) => id) }),
    ...metadataFaults(text(FILES.metadata), { builtIn: takenNames }),
  ];
};
