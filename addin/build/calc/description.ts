import names from '../../hosts/calc/names.json';

import { product } from '../product.mjs';
import { document, element, text } from '../xml';

/** The oldest LibreOffice that the extension was tried in. */
const OLDEST_OFFICE = '7.4';

const XLINK = { 'xmlns:xlink': 'http://www.w3.org/1999/xlink' };
const DESCRIPTIONS = 'http://openoffice.org/extensions/description/2006';
const OFFICE_DESCRIPTIONS = 'http://libreoffice.org/extensions/description/2011';

/** What the extension manager shows. */
export const description = (version: string): string =>
  document(
    element(
      'description',
      { xmlns: DESCRIPTIONS, 'xmlns:lo': OFFICE_DESCRIPTIONS, ...XLINK },
      element('identifier', { value: names.extension }),
      element('version', { value: version }),
      element(
        'dependencies',
        {},
        element('lo:LibreOffice-minimal-version', {
          value: OLDEST_OFFICE,
          'lo:name': `LibreOffice ${OLDEST_OFFICE}`,
        }),
      ),
      element('display-name', {}, element('name', { lang: 'en' }, text(product.title))),
      element(
        'icon',
        {},
        element('default', { 'xlink:href': 'img/mark-42.png' }),
        element('high-contrast', { 'xlink:href': 'img/mark-42-dark.png' }),
      ),
      element('extension-description', {}, element('src', { 'xlink:href': 'description.txt', lang: 'en' })),
    ),
  );
