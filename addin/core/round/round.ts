import type { Amount, Density, Grams, Litres, LitresPerMinute, Rate, Seconds } from '../measuring/quantity';

/** Plants of one size class in one bed. Groups stand in walking order. */
export interface PlantGroup {
  readonly bed: string;
  /** Where the barrel stands for this bed; the stations are visited in the order they first appear. */
  readonly station: string;
  readonly sizeClass: string;
  /** Whole plants, ≥ 0. */
  readonly plants: number;
}

/** Finished solution for one plant of a size class, L, > 0. */
export interface SizeDose {
  readonly sizeClass: string;
  readonly dose: Litres;
}

export interface Rig {
  /** Brim volume of the barrel, L, > 0. */
  readonly barrel: Litres;
  /** Share of the barrel that is filled, 0 < x ≤ 1. */
  readonly fillLine: number;
  /** Liquid the pump cannot lift, L, ≥ 0 and below barrel × fill line. */
  readonly heel: Litres;
  /** Flow at the wand, from timed buckets, L/min, > 0. */
  readonly flow: LitresPerMinute;
  /** Flow of the tap that fills the barrel, L/min, > 0. */
  readonly tapFlow: LitresPerMinute;
  /** Solution that the hose itself holds, made up once a station, L, ≥ 0. */
  readonly hoseContent: Litres;
  /** Walking from one plant to the next, s, ≥ 0. */
  readonly betweenPlants: Seconds;
  /** True when the wand stays open between plants, so that the walk costs solution. */
  readonly wandStaysOpen: boolean;
  /** Counts are whole multiples of this, s, > 0. */
  readonly countStep: Seconds;
  /** Barrel with the pump in it and nothing else, g, ≥ 0. */
  readonly emptyWeight: Grams;
  /** Measuring and dissolving for one fill, s, ≥ 0. */
  readonly premixTime: Seconds;
  /** One move of the barrel with hose and pump, s, ≥ 0. */
  readonly moveTime: Seconds;
}

/** Shares by mass of the product, 0 to 1, as the label prints them (oxides for P and K). */
export interface Analysis {
  readonly N?: number;
  readonly P2O5?: number;
  readonly K2O?: number;
  readonly Fe?: number;
}

export interface MixProduct {
  readonly name: string;
  readonly form: 'powder' | 'liquid';
  readonly rate: Rate;
  /** The label's greatest rate; left out where the label gives none. */
  readonly greatestRate?: Rate;
  readonly density?: Density;
  readonly analysis: Analysis;
  /** Grams that dissolve in a litre of water at the bucket's temperature; asked for, never guessed. */
  readonly solubility?: number;
  /** Price of one gram or one litre, in the kind of the rate; left out where not known. */
  readonly unitPrice?: { readonly per: 'gram' | 'litre'; readonly price: number };
}

export interface RoundInput {
  readonly groups: readonly PlantGroup[];
  readonly doses: readonly SizeDose[];
  readonly rig: Rig;
  readonly mix: readonly MixProduct[];
  readonly style: 'full' | 'equal';
  /** Start on the clock, seconds after midnight. */
  readonly start: Seconds;
  /** Why a rate above a label's greatest one is planned all the same; written on the card. */
  readonly overLabelReason?: string;
}

export interface Count {
  readonly sizeClass: string;
  readonly plants: number;
  readonly dose: Litres;
  /** What the wand is held for. */
  readonly count: Seconds;
  /** What that count gives, and how far it is from the dose (share, signed). */
  readonly given: Litres;
  readonly error: number;
}

export interface FillProduct {
  readonly name: string;
  readonly amount: Amount;
}

export interface Fill {
  /** 1, 2, 3 … through the whole round. */
  readonly number: number;
  /** Water and products together that are made up in this fill, L. */
  readonly makeUp: Litres;
  /** What the pump delivers from it, L. */
  readonly pumpedOut: Litres;
  readonly products: readonly FillProduct[];
  /** Hot water for the powders of this fill; undefined where a powder's solubility is not known. */
  readonly premixWater?: Litres;
  /** Weight of the barrel with this fill and the heel, g. */
  readonly weight: Grams;
  /** Seconds after midnight. */
  readonly fillStart: Seconds;
  readonly pumpStart: Seconds;
  readonly finish: Seconds;
}

export interface StationPlan {
  readonly station: string;
  readonly beds: readonly string[];
  readonly plants: number;
  /** What must leave the wand here: doses, what runs between plants, the hose once. */
  readonly need: Litres;
  readonly fills: readonly Fill[];
  /** Made up and not pumped out: the heel left in the barrel before a move. */
  readonly leftOver: Litres;
}

export interface FoodPerPlant {
  readonly sizeClass: string;
  /** Milligrams for one plant at the count really kept; a nutrient is left out where a product's mass is not known. */
  readonly N?: number;
  readonly P2O5?: number;
  readonly K2O?: number;
  readonly P?: number;
  readonly K?: number;
  readonly Fe?: number;
}

export interface Caution {
  /** Stable id, such as 'ground-fault' or 'over-label'. */
  readonly id: string;
  /** Plain sentence that defers to label, safety sheet, manual, local code or a licensed trade. */
  readonly text: string;
}

export interface RoundPlan {
  readonly counts: readonly Count[];
  readonly stations: readonly StationPlan[];
  readonly totals: {
    readonly plants: number;
    readonly fills: number;
    readonly need: Litres;
    readonly madeUp: Litres;
    readonly pumping: Seconds;
    readonly walking: Seconds;
    readonly products: readonly FillProduct[];
    readonly cost?: number;
    readonly duration: Seconds;
    readonly finish: Seconds;
  };
  readonly food: readonly FoodPerPlant[];
  readonly cautions: readonly Caution[];
}

/** Why a round cannot be planned: a plain sentence that names what was given and what is allowed. */
export interface Refusal {
  readonly refused: string;
  /** Where the user mends it. */
  readonly place: 'garden' | 'doses' | 'rig' | 'mix' | 'round';
}
