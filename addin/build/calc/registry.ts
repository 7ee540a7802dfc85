import { document, element, text, type Node } from '../xml';

const NAMESPACES = {
  'xmlns:oor': 'http://openoffice.org/2001/registry',
  'xmlns:xs': 'http://www.w3.org/2001/XMLSchema',
};

/** A set's member, whole: what stood under its name before is gone. */
export const member = (name: string, ...inside: readonly Node[]): Node =>
  element('node', { 'oor:name': name, 'oor:op': 'replace' }, ...inside);

/** A group that is there already. */
export const group = (name: string, ...inside: readonly Node[]): Node =>
  element('node', { 'oor:name': name }, ...inside);

/** A set's member that others may have added to as well. */
export const fused = (name: string, ...inside: readonly Node[]): Node =>
  element('node', { 'oor:name': name, 'oor:op': 'fuse' }, ...inside);

/** A property of one value. */
export const property = (name: string, value: string, type = 'xs:string'): Node =>
  element('prop', { 'oor:name': name, 'oor:type': type }, element('value', {}, text(value)));

/** A property that users read. */
export const worded = (name: string, value: string): Node =>
  element(
    'prop',
    { 'oor:name': name, 'oor:type': 'xs:string' },
    element('value', { 'xml:lang': 'en-US' }, text(value)),
  );

/** A list property. Without the separator LibreOffice takes the whole text for one entry of another kind, silently. */
export const list = (name: string, ...values: readonly string[]): Node =>
  element(
    'prop',
    { 'oor:name': name, 'oor:type': 'oor:string-list' },
    element('value', { 'oor:separator': ';' }, text(values.join(';'))),
  );

/** A registry file of the office: the component it adds to, and what it adds. */
export const registryFile = (name: string, inPackage: string, ...inside: readonly Node[]): string =>
  document(
    element('oor:component-data', { ...NAMESPACES, 'oor:name': name, 'oor:package': inPackage }, ...inside),
  );
