import names from '../../hosts/calc/names.json';
import words from '../../hosts/calc/words.json';

import { menu, type Entry } from './menu';
import { fused, group, list, member, property, registryFile, worded } from './registry';
import type { Node } from '../xml';

const OFFICE = 'org.openoffice.Office';
const USER_INTERFACE = 'org.openoffice.Office.UI';
const SPREADSHEET = 'com.sun.star.sheet.SpreadsheetDocument';

/** Calc only, in whatever state its window is; the sidebar shows the deck. */
const CONTEXT = 'Calc, any, visible';

const inPackage = (path: string): string => `vnd.sun.star.extension://${names.extension}/${path}`;

/** The deck of the sidebar and the one panel in it. */
export const sidebar = (): string =>
  registryFile(
    'Sidebar',
    USER_INTERFACE,
    group(
      'Content',
      group(
        'DeckList',
        member(
          names.deck,
          worded('Title', words.name),
          property('Id', names.deck),
          property('IconURL', inPackage('img/mark-24.png')),
          property('HighContrastIconURL', inPackage('img/mark-24-dark.png')),
          list('ContextList', `${CONTEXT} `),
          property('OrderIndex', '900', 'xs:int'),
        ),
      ),
      group(
        'PanelList',
        member(
          names.panel,
          worded('Title', words.name),
          property('Id', names.panel),
          property('DeckId', names.deck),
          list('ContextList', `${CONTEXT} `),
          property('ImplementationURL', `private:resource/toolpanel/${names.toolpanel}/${names.panel}`),
          property('OrderIndex', '100', 'xs:int'),
          property('TitleBarIsOptional', 'true', 'xs:boolean'),
          property('WantsAWT', 'true', 'xs:boolean'),
          property('ShowForReadOnlyDocument', 'true', 'xs:boolean'),
        ),
      ),
    ),
  );

/** Who makes the panel. */
export const factories = (): string =>
  registryFile(
    'Factories',
    USER_INTERFACE,
    group(
      'Registered',
      group(
        'UIElementFactories',
        member(
          names.panelFactory,
          property('Type', 'toolpanel'),
          property('Name', names.toolpanel),
          property('Module', ''),
          property('FactoryImplementation', names.panelFactory),
        ),
      ),
    ),
  );

/** Entries are shown in the order of their node names. */
const numbered = (index: number): string => `entry${String(index).padStart(2, '0')}`;

const entryNode = ({ title, command }: Entry, index: number): Node =>
  member(
    numbered(index),
    property('URL', `${names.protocol}${command}`),
    worded('Title', title),
    property('Target', '_self'),
    property('Context', SPREADSHEET),
  );

const menuNode = (entry: (typeof menu.entries)[number], index: number): Node =>
  'command' in entry
    ? entryNode(entry, index)
    : member(
        numbered(index),
        property('URL', ''),
        worded('Title', entry.title),
        property('Target', '_self'),
        property('Context', SPREADSHEET),
        group('Submenu', ...entry.entries.map(entryNode)),
      );

/** The menu, in Calc's windows only. */
export const addons = (): string =>
  registryFile(
    'Addons',
    OFFICE,
    group(
      'AddonUI',
      group(
        'OfficeMenuBar',
        member(
          names.menu,
          worded('Title', menu.title),
          property('Context', SPREADSHEET),
          group('Submenu', ...menu.entries.map(menuNode)),
        ),
      ),
    ),
  );

/** The component that handles the addresses of the menu's entries. */
export const protocolHandler = (): string =>
  registryFile(
    'ProtocolHandler',
    OFFICE,
    group('HandlerSet', member(names.menu, list('Protocols', `${names.protocol}*`))),
  );

/** Formulas as other programs store them are put right as soon as a document is loaded. */
export const jobs = (): string =>
  registryFile(
    'Jobs',
    OFFICE,
    group('Jobs', member(names.openJob, property('Service', names.openJob))),
    group('Events', fused('OnLoadFinished', group('JobList', member(names.openJob)))),
  );
