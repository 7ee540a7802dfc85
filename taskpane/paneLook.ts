/** How the pane stands, of no account to the garden: what a host may keep with the workbook and give back. */
export interface PaneLook {
  /** The section that the user went to; left out while the pane chooses for itself. */
  readonly section?: string;
  /** Folds that the user opened or closed, by block. */
  readonly folds: Readonly<Record<string, boolean>>;
}

const NOTHING: PaneLook = { folds: {} };

/**
 * What was kept, as far as it can be used: it comes out of a file, which another version may have written.
 *
 * @example readLook({ section: 'rig', folds: { 'rig.more': true } }) // the same
 * @example readLook('spoilt') // { folds: {} }
 */
export const readLook = (kept: unknown): PaneLook => {
  if (typeof kept !== 'object' || kept === null) return NOTHING;
  const { section, folds } = kept as { readonly section?: unknown; readonly folds?: unknown };
  const open = typeof folds === 'object' && folds !== null ? Object.entries(folds) : [];
  return {
    ...(typeof section === 'string' ? { section } : {}),
    folds: Object.fromEntries(open.filter((fold): fold is [string, boolean] => typeof fold[1] === 'boolean')),
  };
};
