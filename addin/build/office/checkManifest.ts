import { JSDOM } from 'jsdom';

import { addressFaults, imageFaults, type Package } from './checkAddresses';
import { MANIFEST_ORDER, RESOURCE_OF } from './manifestOrder';

/** What the manifest is held against. */
export interface ManifestSurroundings extends Package {
  /** The buttons' actions that the page associates. */
  readonly actions: readonly string[];
}

/** The manifest taken apart. */
interface Parts {
  readonly all: readonly Element[];
  readonly named: (name: string) => readonly Element[];
  readonly resources: ReadonlyMap<string, Element>;
}

const XSI = 'http://www.w3.org/2001/XMLSchema-instance';
const LONGEST_ID = 32;
const LONGEST_TEXT: Readonly<Record<string, number>> = { 'bt:ShortStrings': 125, 'bt:LongStrings': 250 };
const LONGEST_VALUE: Readonly<Record<string, number>> = { DisplayName: 125, Description: 250 };
const MOST_CONTROLS = 6;
const BUTTON_SIZES = ['16', '20', '24', '32', '40', '48', '64', '80'];
const NEEDED_SIZES = ['16', '32', '80'];
const ADDIN_ICONS = { IconUrl: 32, HighResolutionIconUrl: 64 };
const UNDECLARABLE = /^ExcelApi(Desktop|Online)|Preview|Beta/i;

const attribute = (element: Element | undefined, name: string): string => element?.getAttribute(name) ?? '';
const valueOf = (element: Element | undefined): string => attribute(element, 'DefaultValue');
const wordsOf = (element: Element | undefined): string => element?.textContent?.trim() ?? '';
const kindOf = (element: Element): string =>
  [element.tagName, element.getAttributeNS(XSI, 'type')].filter(Boolean).join(' ');
const unless = (holds: boolean, fault: string): string[] => (holds ? [] : [fault]);
const twice = (names: readonly string[]): string[] => names.filter((name, at) => names.indexOf(name) !== at);

/** Children that are unknown, missing, twice or out of order. */
const orderFaults = (element: Element): string[] => {
  const children = [...element.children].map(({ tagName }) => tagName);
  const rule = MANIFEST_ORDER[kindOf(element)];
  if (!rule)
    return unless(children.length === 0, `<${kindOf(element)}> is not known to hold <${children[0]}>.`);
  const places = children.map((child) => rule.inOrder.indexOf(child));
  return [
    ...children
      .filter((_, at) => places[at]! < 0)
      .map((child) => `<${element.tagName}> does not take <${child}>.`),
    ...children
      .filter((_, at) => places[at]! >= 0 && places.slice(0, at).some((before) => before > places[at]!))
      .map((child) => `<${child}> stands too late in <${element.tagName}>.`),
    ...(rule.required ?? [])
      .filter((name) => !children.includes(name))
      .map((name) => `<${element.tagName}> lacks <${name}>.`),
    ...twice(children)
      .filter((name) => !rule.repeated?.includes(name))
      .map((name) => `<${name}> stands twice in <${element.tagName}>.`),
  ];
};

const headFaults = ({ named }: Parts, surroundings: ManifestSurroundings): string[] => [
  ...unless(
    /^[0-9a-f]{8}-([0-9a-f]{4}-){3}[0-9a-f]{12}$/i.test(wordsOf(named('Id')[0])),
    'The id is not a GUID.',
  ),
  ...unless(
    /^\d+(\.\d+){3}$/.test(wordsOf(named('Version')[0])),
    'The version is not four numbers with dots between them.',
  ),
  ...named('Set').flatMap((set) => [
    ...unless(
      !UNDECLARABLE.test(attribute(set, 'Name')),
      `The set ${attribute(set, 'Name')} cannot be declared in a manifest.`,
    ),
    ...unless(
      /^\d+\.\d+$/.test(attribute(set, 'MinVersion')),
      `The set ${attribute(set, 'Name')} has no version.`,
    ),
  ]),
  ...named('Requirements').flatMap((one) =>
    unless(one.parentElement?.tagName === 'OfficeApp', 'The requirements stand in the version overrides.'),
  ),
  ...Object.entries(LONGEST_VALUE).flatMap(([name, longest]) => {
    const { length } = valueOf(named(name).find((one) => one.parentElement?.tagName === 'OfficeApp'));
    return unless(
      length > 0 && length <= longest,
      `<${name}> has ${length} characters; 1 to ${longest} are allowed.`,
    );
  }),
  ...Object.entries(ADDIN_ICONS).flatMap(([name, size]) =>
    imageFaults(valueOf(named(name)[0]), size, name, surroundings),
  ),
  ...addressFaults(valueOf(named('SupportUrl')[0]), 'SupportUrl', surroundings),
];

const resourceFaults = ({ all, resources }: Parts, surroundings: ManifestSurroundings): string[] => {
  const defined = all.filter((one) => one.tagName.startsWith('bt:') && one.hasAttribute('id'));
  const referring = all.filter((one) => one.hasAttribute('resid'));
  const used = new Set(referring.map((one) => attribute(one, 'resid')));
  return [
    ...twice(defined.map((one) => attribute(one, 'id'))).map((id) => `The resource ${id} is defined twice.`),
    ...defined.flatMap((one) => {
      const id = attribute(one, 'id');
      const kind = one.parentElement?.tagName ?? '';
      const { length } = valueOf(one);
      const longest = LONGEST_TEXT[kind];
      return [
        ...unless(
          id.length > 0 && id.length <= LONGEST_ID,
          `The resource id ${id} does not have 1 to ${LONGEST_ID} characters.`,
        ),
        ...unless(used.has(id), `The resource ${id} is not used.`),
        ...(longest === undefined
          ? []
          : unless(
              length > 0 && length <= longest,
              `The text ${id} has ${length} characters; 1 to ${longest} are allowed.`,
            )),
        ...(kind === 'bt:Urls' ? addressFaults(valueOf(one), id, surroundings) : []),
      ];
    }),
    ...referring.flatMap((one) => {
      const id = attribute(one, 'resid');
      const kind = resources.get(id)?.parentElement?.tagName;
      const wanted = RESOURCE_OF[one.tagName];
      if (kind === undefined) return [`<${one.tagName}> names the resource ${id}, which is not defined.`];
      return unless(
        kind === wanted,
        `<${one.tagName}> names ${id}, which is in <${kind}> and not in <${wanted}>.`,
      );
    }),
  ];
};

const iconFaults = ({ named, resources }: Parts, surroundings: ManifestSurroundings): string[] =>
  named('Icon').flatMap((icon) => {
    const images = [...icon.children];
    const sizes = images.map((one) => attribute(one, 'size'));
    return [
      ...NEEDED_SIZES.filter((size) => !sizes.includes(size)).map(
        (size) => `An icon lacks the size ${size}.`,
      ),
      ...sizes
        .filter((size) => !BUTTON_SIZES.includes(size))
        .map((size) => `An icon has the size ${size}, which no button shows.`),
      ...images.flatMap((one) => {
        const id = attribute(one, 'resid');
        const resource = resources.get(id);
        return resource
          ? imageFaults(valueOf(resource), Number(attribute(one, 'size')), id, surroundings)
          : [];
      }),
    ];
  });

const runtimeFaults = ({ named, resources }: Parts, surroundings: ManifestSurroundings): string[] => {
  const [runtime] = named('Runtime');
  const page = attribute(runtime, 'resid');
  const start = valueOf(named('DefaultSettings')[0]?.firstElementChild ?? undefined);
  const sourceIn = (name: string): Element[] =>
    named(name).flatMap((one) => [...one.children].filter(({ tagName }) => tagName === 'SourceLocation'));
  return [
    ...addressFaults(start, 'DefaultSettings', surroundings),
    ...unless(attribute(runtime, 'lifetime') === 'long', 'The runtime does not live long.'),
    ...[...sourceIn('Page'), ...named('FunctionFile'), ...sourceIn('Action')].flatMap((one) =>
      unless(
        attribute(one, 'resid') === page,
        `<${one.tagName}> names ${attribute(one, 'resid')} and the runtime ${page}: the shared runtime does not load.`,
      ),
    ),
    ...unless(named('TaskpaneId').length === 0, 'A shared runtime takes no <TaskpaneId>.'),
    ...unless(
      valueOf(resources.get(page)) === start,
      'The page of the runtime is not the one the add-in starts with.',
    ),
  ];
};

const ribbonFaults = ({ named }: Parts, { actions }: ManifestSurroundings): string[] => {
  const called = named('FunctionName').map(wordsOf);
  return [
    ...named('Group').flatMap((group) => {
      const { length } = [...group.children].filter(({ tagName }) => tagName === 'Control');
      return unless(length <= MOST_CONTROLS, `A group has ${length} controls; ${MOST_CONTROLS} are allowed.`);
    }),
    ...twice([...named('Control'), ...named('Group')].map((one) => attribute(one, 'id'))).map(
      (id) => `Two controls have the id ${id}.`,
    ),
    ...called
      .filter((name) => !actions.includes(name))
      .map((name) => `The button's action ${name} is not associated by the page.`),
    ...actions.filter((name) => !called.includes(name)).map((name) => `No button calls the action ${name}.`),
  ];
};

/**
 * What is wrong with an add-in-only manifest, a sentence each; none where it is in order. It holds what the platform's
 * manifest reference says of order, references, lengths and the shared runtime, and that every address is a built
 * file. The platform's own service, which needs the network, may ask for more.
 */
export const manifestFaults = (xml: string, surroundings: ManifestSurroundings): string[] => {
  const { window } = new JSDOM('');
  const parsed = new window.DOMParser().parseFromString(xml, 'text/xml');
  const all = [...parsed.querySelectorAll('*')];
  if (all.some(({ tagName }) => tagName === 'parsererror')) return ['The manifest is not well-formed XML.'];
  const defined = all.filter((one) => one.tagName.startsWith('bt:') && one.hasAttribute('id'));
  const parts: Parts = {
    all,
    named: (name) => all.filter(({ tagName }) => tagName === name),
    resources: new Map(defined.map((one) => [attribute(one, 'id'), one])),
  };
  const faults = [
    ...unless(
      kindOf(parsed.documentElement) === 'OfficeApp TaskPaneApp',
      'The manifest is not a pane add-in.',
    ),
    ...all.flatMap(orderFaults),
    ...headFaults(parts, surroundings),
    ...resourceFaults(parts, surroundings),
    ...iconFaults(parts, surroundings),
    ...runtimeFaults(parts, surroundings),
    ...ribbonFaults(parts, surroundings),
  ];
  return [...new Set(faults)];
};
