/** What an element of the manifest may hold: its children in the one order that programs take, and those it must hold. */
export interface ElementRule {
  readonly inOrder: readonly string[];
  readonly required?: readonly string[];
  /** Children that may stand more than once, one after another. */
  readonly repeated?: readonly string[];
}

const one = (...names: string[]): ElementRule => ({ inOrder: names, required: names });

/**
 * The parts of the add-in-only manifest that this add-in uses, after the platform's manifest reference
 * (https://learn.microsoft.com/javascript/api/manifest and [MS-OWEMXML], Appendix A). An element is known by its
 * name, with the kind it declares where that decides what it holds.
 */
export const MANIFEST_ORDER: Readonly<Record<string, ElementRule>> = {
  'OfficeApp TaskPaneApp': {
    inOrder: [
      'Id',
      'AlternateId',
      'Version',
      'ProviderName',
      'DefaultLocale',
      'DisplayName',
      'Description',
      'IconUrl',
      'HighResolutionIconUrl',
      'SupportUrl',
      'AppDomains',
      'Hosts',
      'Requirements',
      'DefaultSettings',
      'Permissions',
      'VersionOverrides',
    ],
    required: [
      'Id',
      'Version',
      'ProviderName',
      'DefaultLocale',
      'DisplayName',
      'Description',
      'IconUrl',
      'HighResolutionIconUrl',
      'SupportUrl',
      'Hosts',
      'Requirements',
      'DefaultSettings',
      'Permissions',
      'VersionOverrides',
    ],
  },
  AppDomains: { inOrder: ['AppDomain'], repeated: ['AppDomain'] },
  Hosts: { inOrder: ['Host'], required: ['Host'], repeated: ['Host'] },
  Requirements: one('Sets'),
  Sets: { inOrder: ['Set'], required: ['Set'], repeated: ['Set'] },
  DefaultSettings: one('SourceLocation'),
  'VersionOverrides VersionOverridesV1_0': {
    inOrder: ['Description', 'Requirements', 'Hosts', 'Resources'],
    required: ['Hosts', 'Resources'],
  },
  'Host Workbook': {
    inOrder: ['Runtimes', 'AllFormFactors', 'DesktopFormFactor'],
    required: ['Runtimes', 'AllFormFactors', 'DesktopFormFactor'],
  },
  Runtimes: one('Runtime'),
  AllFormFactors: one('ExtensionPoint'),
  DesktopFormFactor: {
    inOrder: ['GetStarted', 'FunctionFile', 'ExtensionPoint'],
    required: ['GetStarted', 'FunctionFile', 'ExtensionPoint'],
    repeated: ['ExtensionPoint'],
  },
  GetStarted: one('Title', 'Description', 'LearnMoreUrl'),
  'ExtensionPoint CustomFunctions': one('Script', 'Page', 'Metadata', 'Namespace'),
  'ExtensionPoint PrimaryCommandSurface': { inOrder: ['OfficeTab', 'CustomTab'] },
  Script: one('SourceLocation'),
  Page: one('SourceLocation'),
  Metadata: one('SourceLocation'),
  OfficeTab: { inOrder: ['Group'], required: ['Group'], repeated: ['Group'] },
  Group: {
    inOrder: ['Label', 'Icon', 'Control'],
    required: ['Label', 'Icon', 'Control'],
    repeated: ['Control'],
  },
  'Control Button': one('Label', 'Supertip', 'Icon', 'Action'),
  Supertip: one('Title', 'Description'),
  Icon: { inOrder: ['bt:Image'], required: ['bt:Image'], repeated: ['bt:Image'] },
  'Action ExecuteFunction': one('FunctionName'),
  'Action ShowTaskpane': {
    inOrder: ['TaskpaneId', 'SourceLocation', 'Title'],
    required: ['SourceLocation'],
  },
  Resources: one('bt:Images', 'bt:Urls', 'bt:ShortStrings', 'bt:LongStrings'),
  'bt:Images': { inOrder: ['bt:Image'], required: ['bt:Image'], repeated: ['bt:Image'] },
  'bt:Urls': { inOrder: ['bt:Url'], required: ['bt:Url'], repeated: ['bt:Url'] },
  'bt:ShortStrings': { inOrder: ['bt:String'], required: ['bt:String'], repeated: ['bt:String'] },
  'bt:LongStrings': { inOrder: ['bt:String'], required: ['bt:String'], repeated: ['bt:String'] },
};

/** The kind of resource that an element's `resid` names. */
export const RESOURCE_OF: Readonly<Record<string, string>> = {
  Runtime: 'bt:Urls',
  SourceLocation: 'bt:Urls',
  FunctionFile: 'bt:Urls',
  LearnMoreUrl: 'bt:Urls',
  Namespace: 'bt:ShortStrings',
  Label: 'bt:ShortStrings',
  Title: 'bt:ShortStrings',
  Description: 'bt:LongStrings',
  'bt:Image': 'bt:Images',
};
