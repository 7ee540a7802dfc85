import type { PaneEvent } from '../view';

/** Hands what the user did to the pane. */
export type Send = (event: PaneEvent) => void;

/**
 * A document id for something the view names: ids there hold any text, ids here no spaces.
 *
 * @example documentId('rig.capacity', 'error') // 'wc-rig.capacity-error'
 */
export const documentId = (id: string, part = ''): string =>
  `wc-${encodeURIComponent(id).replaceAll('%', '_')}${part === '' ? '' : `-${part}`}`;
