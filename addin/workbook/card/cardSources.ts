/** A number on another sheet and the cell that says its unit, both as formula text. */
export interface MeasuredCell {
  readonly value: string;
  readonly unit: string;
}

/** Where the formulas of the card and of the tank sheet find what the other sheets hold: names and ranges. */
export interface CardSources {
  readonly plants: { readonly bed: string; readonly sizeClass: string; readonly howMany: string };
  readonly doses: { readonly sizeClass: string; readonly dose: string; readonly unit: string };
  readonly mix: { readonly product: string; readonly rate: string; readonly rateUnit: string };
  readonly products: {
    readonly product: string;
    readonly density: string;
    readonly greatestRate: string;
    readonly greatestRateUnit: string;
    readonly solubility: string;
    readonly price: string;
    readonly pack: string;
    readonly packUnit: string;
  };
  readonly rig: {
    readonly barrel: MeasuredCell;
    readonly heel: MeasuredCell;
    readonly flow: MeasuredCell;
    readonly tapFlow: MeasuredCell;
    readonly hose: MeasuredCell;
    readonly emptyWeight: MeasuredCell;
    readonly fillLine: string;
    /** Seconds from one plant to the next. */
    readonly betweenPlants: string;
    /** "yes" or "no". */
    readonly wandStaysOpen: string;
    readonly countStep: string;
    readonly premixMinutes: string;
    readonly moveMinutes: string;
  };
}
