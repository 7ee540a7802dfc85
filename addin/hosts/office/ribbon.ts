/** A button of the ribbon that does something without the pane; the manifest and the page know it by its id. */
export interface RibbonButton {
  readonly id: string;
  readonly label: string;
  readonly tip: string;
}

/** The button that opens the pane. The program opens it; nothing here relies on doing so by code. */
export const PANE_BUTTON: RibbonButton = {
  id: 'openPane',
  label: 'Feed the roses',
  tip: "Open the pane: from your list of roses to today's barrels, measures and counts.",
};

export const RIBBON = [
  {
    id: 'makeCard',
    label: 'Make the card',
    tip: "Make today's round card from the garden, the rig and the mix on the sheets.",
  },
  { id: 'showCard', label: 'Show the card', tip: 'Go to the round card.' },
  {
    id: 'repairFormulas',
    label: 'Repair formulas',
    tip: 'Write FEED formulas anew where a cell shows #NAME?, as it may after the workbook was opened without Wandcount.',
  },
] as const satisfies readonly RibbonButton[];

export type RibbonButtonId = (typeof RIBBON)[number]['id'];
