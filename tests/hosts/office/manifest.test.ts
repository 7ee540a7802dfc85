import { describe, expect, test } from 'vitest';

import { manifestFaults } from '../../../addin/build/office/checkManifest';
import { baseAddress, DEFAULT_BASE, FILES } from '../../../addin/build/office/package';
import { packageFiles } from '../../../addin/build/office/packageFiles';
import { RIBBON } from '../../../addin/hosts/office/ribbon';
import packageJson from '../../../package.json';

const files: Record<string, string | Uint8Array> = { ...packageFiles(DEFAULT_BASE), [FILES.script]: '' };
const good = files[FILES.manifest] as string;
const actions = RIBBON.map(({ id }) => id);

const built = (path: string): Uint8Array | undefined => {
  const file = files[path];
  return typeof file === 'string' ? new TextEncoder().encode(file) : file;
};
const faultsOf = (xml: string): string[] => manifestFaults(xml, { base: DEFAULT_BASE, built, actions });

/** The manifest with a piece of it replaced; a piece that is not there is a mistake of the test. */
const seeded = (from: string | RegExp, to: string): string => {
  const bad = good.replace(from, to);
  expect(bad).not.toBe(good);
  return bad;
};

const swapped = (first: string, second: string): string => {
  const [a, b] = [
    new RegExp(` *<${first}[\\s>][^]*?</${first}>\n`),
    new RegExp(` *<${second}[\\s>][^]*?</${second}>\n`),
  ];
  const [one, two] = [a.exec(good)![0], b.exec(good)![0]];
  return good.replace(one, '').replace(two, two + one);
};

describe('the manifest', () => {
  test('has the name, the version and the words that every host has', () => {
    const { name, version, description } = packageJson;
    expect(good.match(/<DisplayName DefaultValue="(.*)"\/>/)?.[1]?.toLowerCase()).toBe(name);
    expect(good).toContain(`<Version>${version}.0</Version>`);
    expect(good).toContain(`<Description DefaultValue="${description}"/>`);
  });

  test('is in order', () => {
    expect(faultsOf(good)).toEqual([]);
  });

  test.each<[string, string, string]>([
    [
      'a version of three numbers',
      seeded('0.1.0.0', '0.1.0'),
      'The version is not four numbers with dots between them.',
    ],
    ['an id that is none', seeded(/<Id>.*<\/Id>/, '<Id>roses</Id>'), 'The id is not a GUID.'],
    ['no provider', seeded(/ *<ProviderName>.*\n/, ''), '<OfficeApp> lacks <ProviderName>.'],
    [
      'an unknown part',
      seeded('<AppDomains>', '<Colour/><AppDomains>'),
      '<OfficeApp> does not take <Colour>.',
    ],
    [
      'two permissions',
      seeded(/( *<Permissions>.*\n)/, '$1$1'),
      '<Permissions> stands twice in <OfficeApp>.',
    ],
    [
      'requirements before hosts',
      swapped('Hosts', 'Requirements'),
      '<Hosts> stands too late in <OfficeApp>.',
    ],
    [
      'the ribbon before the functions',
      swapped('AllFormFactors', 'DesktopFormFactor'),
      '<AllFormFactors> stands too late in <Host>.',
    ],
    [
      'a label after the icon',
      seeded(/( *<Label resid="Group.Label"\/>\n)( *<Icon>[^]*?<\/Icon>\n)/, '$2$1'),
      '<Label> stands too late in <Group>.',
    ],
    [
      'a resource that is not defined',
      seeded(/ *<bt:String id="showCard.Tip".*\n/, ''),
      '<Description> names the resource showCard.Tip, which is not defined.',
    ],
    [
      'a resource of no use',
      seeded('<bt:LongStrings>', '<bt:LongStrings><bt:String id="Spare" DefaultValue="x"/>'),
      'The resource Spare is not used.',
    ],
    [
      'a resource defined twice',
      seeded(/( *<bt:String id="Group.Label".*\n)/, '$1$1'),
      'The resource Group.Label is defined twice.',
    ],
    [
      'a resource of the wrong kind',
      seeded('<LearnMoreUrl resid="Support.Url"/>', '<LearnMoreUrl resid="Group.Label"/>'),
      '<LearnMoreUrl> names Group.Label, which is in <bt:ShortStrings> and not in <bt:Urls>.',
    ],
    [
      'a long resource id',
      good.replaceAll('GetStarted.Title', 'GetStarted.Title.that.goes.on.and.on'),
      'does not have 1 to 32 characters.',
    ],
    [
      'a long label',
      seeded('DefaultValue="Show the card"', `DefaultValue="${'x'.repeat(126)}"`),
      'The text showCard.Label has 126 characters; 1 to 125 are allowed.',
    ],
    [
      'a long tip',
      seeded('DefaultValue="Go to the round card."', `DefaultValue="${'x'.repeat(251)}"`),
      'The text showCard.Tip has 251 characters; 1 to 250 are allowed.',
    ],
    [
      'a long description',
      seeded(/<Description DefaultValue=".*"\/>/, `<Description DefaultValue="${'x'.repeat(251)}"/>`),
      '<Description> has 251 characters; 1 to 250 are allowed.',
    ],
    [
      'another page for the runtime',
      seeded('<Runtime resid="Pane.Url"', '<Runtime resid="Support.Url"'),
      'the shared runtime does not load.',
    ],
    [
      'another page for the functions',
      seeded(/(<Page>\s*<SourceLocation resid=)"Pane.Url"/, '$1"Support.Url"'),
      '<SourceLocation> names Support.Url and the runtime Pane.Url',
    ],
    [
      'another page for the buttons',
      seeded('<FunctionFile resid="Pane.Url"/>', '<FunctionFile resid="Support.Url"/>'),
      '<FunctionFile> names Support.Url and the runtime Pane.Url',
    ],
    [
      'another page for the pane',
      seeded(/(xsi:type="ShowTaskpane">\s*<SourceLocation resid=)"Pane.Url"/, '$1"Support.Url"'),
      '<SourceLocation> names Support.Url and the runtime Pane.Url',
    ],
    [
      'a pane of its own',
      seeded(/(xsi:type="ShowTaskpane">)/, '$1<TaskpaneId>p</TaskpaneId>'),
      'A shared runtime takes no <TaskpaneId>.',
    ],
    [
      'a short-lived runtime',
      seeded('lifetime="long"', 'lifetime="short"'),
      'The runtime does not live long.',
    ],
    [
      'another page to start with',
      seeded(/(<DefaultSettings>\s*<SourceLocation DefaultValue="[^"]*)pane.html/, '$1support.html'),
      'The page of the runtime is not the one the add-in starts with.',
    ],
    [
      'an address that is not https',
      seeded('"https://localhost:3000/functions.json"', '"http://localhost:3000/functions.json"'),
      'The address of Metadata.Url is not https.',
    ],
    [
      'an address elsewhere',
      seeded('"https://localhost:3000/functions.json"', '"https://elsewhere.example/functions.json"'),
      'The address of Metadata.Url is not below https://localhost:3000.',
    ],
    [
      'an address of nothing',
      seeded('/functions.json"', '/function.json"'),
      'The address of Metadata.Url names no built file.',
    ],
    [
      'a button without its small icon',
      good.replaceAll(/ *<bt:Image size="16".*\n/g, ''),
      'An icon lacks the size 16.',
    ],
    [
      'a size that no button shows',
      good.replaceAll('<bt:Image size="20"', '<bt:Image size="21"'),
      'An icon has the size 21, which no button shows.',
    ],
    [
      'an icon of another size',
      seeded(
        '"Icon.80" DefaultValue="https://localhost:3000/icons/mark-80.png"',
        '"Icon.80" DefaultValue="https://localhost:3000/icons/mark-64.png"',
      ),
      'The image of Icon.80 is 64 × 64 pixels and not 80 × 80.',
    ],
    [
      'an icon that is no picture',
      seeded(
        '"Icon.80" DefaultValue="https://localhost:3000/icons/mark-80.png"',
        '"Icon.80" DefaultValue="https://localhost:3000/support.html"',
      ),
      'The image of Icon.80 is not a PNG.',
    ],
    [
      'a large icon for the add-in',
      seeded(/(<IconUrl DefaultValue="[^"]*)mark-32/, '$1mark-64'),
      'The image of IconUrl is 64 × 64 pixels and not 32 × 32.',
    ],
    [
      'a set that only some programs have',
      seeded('<Set Name="ExcelApi"', '<Set Name="ExcelApiOnline"'),
      'The set ExcelApiOnline cannot be declared in a manifest.',
    ],
    [
      'an action that nobody associates',
      seeded('<FunctionName>showCard<', '<FunctionName>showCards<'),
      "The button's action showCards is not associated by the page.",
    ],
    [
      'an action without a button',
      seeded(/ *<Control xsi:type="Button" id="Wandcount.showCard">[^]*?<\/Control>\n/, ''),
      'No button calls the action showCard.',
    ],
    [
      'seven buttons',
      seeded(/( *<Control xsi:type="Button" id="Wandcount.showCard">[^]*?<\/Control>\n)/, '$1$1$1$1'),
      'A group has 7 controls; 6 are allowed.',
    ],
    [
      'two buttons of one id',
      seeded('id="Wandcount.showCard"', 'id="Wandcount.makeCard"'),
      'Two controls have the id Wandcount.makeCard.',
    ],
    ['an unclosed part', seeded('</Resources>', ''), 'The manifest is not well-formed XML.'],
  ])('with %s is refused', (_what, xml, fault) => {
    expect(faultsOf(xml).join('\n')).toContain(fault);
  });

  test('is the same for another address but for that address', () => {
    const base = 'https://roses.example/feed';
    const other = packageFiles(base)[FILES.manifest] as string;
    expect(other.replaceAll(base, DEFAULT_BASE).replace('https://roses.example<', `${DEFAULT_BASE}<`)).toBe(
      good,
    );
  });
});

describe('the base address', () => {
  test('may have a path, and ends without a slash', () => {
    expect(baseAddress('https://roses.example/feed//')).toBe('https://roses.example/feed');
    expect(baseAddress('https://LOCALHOST:3000')).toBe('https://localhost:3000');
  });

  test.each([
    '',
    'roses',
    'http://localhost:3000',
    'ftp://roses.example',
    'https://roses.example/?a=b',
    'https://roses.example/#a',
  ])('“%s” is refused in a sentence', (given) => {
    expect(() => baseAddress(given)).toThrow(`“${given}” cannot be the base address; give an https address`);
  });
});
