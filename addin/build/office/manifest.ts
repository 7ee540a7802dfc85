import { NAMESPACE } from '../../../functions';
import { BASELINE } from '../../hosts/office/baseline';
import { PANE_BUTTON, RIBBON, type RibbonButton } from '../../hosts/office/ribbon';
import { product } from '../product.mjs';
import { document, element, text, type Node } from '../xml';

import { ADDIN_ID, addressOf, FILES, ICON_SIZES, iconFile } from './package';

/** The program loads one page for the pane, the functions and the buttons only where all name the same resource. */
const PAGE = 'Pane.Url';

const NAMES = {
  xmlns: 'http://schemas.microsoft.com/office/appforoffice/1.1',
  'xmlns:xsi': 'http://www.w3.org/2001/XMLSchema-instance',
  'xmlns:bt': 'http://schemas.microsoft.com/office/officeappbasictypes/1.0',
};
const OVERRIDES = 'http://schemas.microsoft.com/office/taskpaneappversionoverrides';

const GROUP = { id: 'Wandcount.Group', label: 'Group.Label' };

const valued = (name: string, value: string): Node => element(name, { DefaultValue: value });
const referring = (name: string, resid: string): Node => element(name, { resid });
const leaf = (name: string, value: string): Node => element(name, {}, text(value));

const icon = element(
  'Icon',
  {},
  ...ICON_SIZES.map((size) => element('bt:Image', { size: String(size), resid: `Icon.${size}` })),
);

const button = ({ id }: RibbonButton, action: Node): Node =>
  element(
    'Control',
    { 'xsi:type': 'Button', id: `Wandcount.${id}` },
    referring('Label', `${id}.Label`),
    element('Supertip', {}, referring('Title', `${id}.Label`), referring('Description', `${id}.Tip`)),
    icon,
    action,
  );

const source = (resid: string): Node => referring('SourceLocation', resid);

const functions = element(
  'ExtensionPoint',
  { 'xsi:type': 'CustomFunctions' },
  element('Script', {}, source('Script.Url')),
  element('Page', {}, source(PAGE)),
  element('Metadata', {}, source('Metadata.Url')),
  referring('Namespace', 'Functions.Namespace'),
);

const ribbon = element(
  'ExtensionPoint',
  { 'xsi:type': 'PrimaryCommandSurface' },
  element(
    'OfficeTab',
    { id: 'TabHome' },
    element(
      'Group',
      { id: GROUP.id },
      referring('Label', GROUP.label),
      icon,
      button(PANE_BUTTON, element('Action', { 'xsi:type': 'ShowTaskpane' }, source(PAGE))),
      ...RIBBON.map((one) =>
        button(one, element('Action', { 'xsi:type': 'ExecuteFunction' }, leaf('FunctionName', one.id))),
      ),
    ),
  ),
);

const host = element(
  'Host',
  { 'xsi:type': 'Workbook' },
  element('Runtimes', {}, element('Runtime', { resid: PAGE, lifetime: 'long' })),
  element('AllFormFactors', {}, functions),
  element(
    'DesktopFormFactor',
    {},
    element(
      'GetStarted',
      {},
      referring('Title', 'GetStarted.Title'),
      referring('Description', 'GetStarted.Tip'),
      referring('LearnMoreUrl', 'Support.Url'),
    ),
    referring('FunctionFile', PAGE),
    ribbon,
  ),
);

const resource = (name: string, id: string, value: string): Node =>
  element(name, { id, DefaultValue: value });

const resources = (base: string): Node => {
  const at = (file: string) => addressOf(base, file);
  const buttons: readonly RibbonButton[] = [PANE_BUTTON, ...RIBBON];
  return element(
    'Resources',
    {},
    element(
      'bt:Images',
      {},
      ...ICON_SIZES.map((size) => resource('bt:Image', `Icon.${size}`, at(iconFile(size)))),
    ),
    element(
      'bt:Urls',
      {},
      resource('bt:Url', PAGE, at(FILES.pane)),
      resource('bt:Url', 'Script.Url', at(FILES.script)),
      resource('bt:Url', 'Metadata.Url', at(FILES.metadata)),
      resource('bt:Url', 'Support.Url', at(FILES.support)),
    ),
    element(
      'bt:ShortStrings',
      {},
      resource('bt:String', 'Functions.Namespace', NAMESPACE),
      resource('bt:String', GROUP.label, product.title),
      resource('bt:String', 'GetStarted.Title', `${product.title} is ready`),
      ...buttons.map(({ id, label }) => resource('bt:String', `${id}.Label`, label)),
    ),
    element(
      'bt:LongStrings',
      {},
      resource(
        'bt:String',
        'GetStarted.Tip',
        `Press “${PANE_BUTTON.label}” on the Home tab, or type =${NAMESPACE}. in a cell.`,
      ),
      ...buttons.map(({ id, tip }) => resource('bt:String', `${id}.Tip`, tip)),
    ),
  );
};

const requirements = element(
  'Requirements',
  {},
  element(
    'Sets',
    { DefaultMinVersion: '1.1' },
    ...Object.entries(BASELINE).map(([Name, MinVersion]) => element('Set', { Name, MinVersion })),
  ),
);

/**
 * The add-in-only manifest: what a program that loads Office Add-ins reads first.
 *
 * @param base the address that the package is served from, without a slash at the end
 */
export const manifest = (base: string): string =>
  document(
    element(
      'OfficeApp',
      { ...NAMES, 'xsi:type': 'TaskPaneApp' },
      leaf('Id', ADDIN_ID),
      leaf('Version', `${product.version}.0`),
      leaf('ProviderName', product.title),
      leaf('DefaultLocale', 'en-US'),
      valued('DisplayName', product.title),
      valued('Description', product.description),
      valued('IconUrl', addressOf(base, iconFile(32))),
      valued('HighResolutionIconUrl', addressOf(base, iconFile(64))),
      valued('SupportUrl', addressOf(base, FILES.support)),
      element('AppDomains', {}, leaf('AppDomain', new URL(base).origin)),
      element('Hosts', {}, element('Host', { Name: 'Workbook' })),
      requirements,
      element('DefaultSettings', {}, valued('SourceLocation', addressOf(base, FILES.pane))),
      leaf('Permissions', 'ReadWriteDocument'),
      element(
        'VersionOverrides',
        { xmlns: OVERRIDES, 'xsi:type': 'VersionOverridesV1_0' },
        element('Hosts', {}, host),
        resources(base),
      ),
    ),
  );
