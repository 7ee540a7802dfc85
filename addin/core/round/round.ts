import type { Amount, Density, Grams, Litres, LitresPerMinute, Rate, Seconds } from '../measuring/quantity';
import type { System, Unit } from '../measuring/units';
import type { CardMeasure } from './cardMeasure';

/** Plants of one size class in one bed. Groups stand in walking order. */
export interface PlantGroup {
  readonly bed: string;
  /** Where the barrel stands for this bed; the stations are visited in the order they first appear. */
  readonly station: string;
  readonly sizeClass: string;
  /** Whole plants, ≥ 0. */
  readonly plants: number;
}

/** Finished solution for one plant of a size class, L, from 1 mL to what one fill delivers. */
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
  /** Solution that the hose itself holds, L, ≥ 0. Made up once a station: a hose is drained before it is carried. */
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

/**
 * Shares by mass of the product, 0 to 1, as the label prints them (oxides for P and K). A nutrient that is left out
 * is one the label does not state: it adds nothing to the food.
 */
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
  /** Unit of the rate's own kind in which it is measured; mL or g where left out. */
  readonly measuredIn?: Unit;
  /** The label's greatest rate; left out where the label gives none or it is not known. */
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
  /** Why a rate above a label's greatest one is planned all the same; written on the card. Blank is not given. */
  readonly overLabelReason?: string;
  /** The measures that sentences speak in; metric where left out. The plan itself is always in L, g and s. */
  readonly measures?: System;
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
  /** What its rate comes to. */
  readonly amount: Amount;
  /** What is measured of it, and what that comes to. */
  readonly measure: CardMeasure;
  readonly measured: Amount;
}

/** A product in the whole round. */
export interface ProductTotal {
  readonly name: string;
  readonly amount: Amount;
  /** What is measured of it, all fills together. */
  readonly measured: Amount;
  /** Price of what is measured; left out where it is not known. */
  readonly cost?: number;
}

export interface Fill {
  /** 1, 2, 3 … through the whole round. */
  readonly number: number;
  /** Water and products together that are made up in this fill, L. */
  readonly makeUp: Litres;
  /** What the pump delivers from it, L. */
  readonly pumpedOut: Litres;
  readonly products: readonly FillProduct[];
  /**
   * Least hot water for the powders of this fill, L: the sum over the powders; 0 where the mix has no powder,
   * left out where a powder's solubility, or the density of one measured by volume, is not known.
   */
  readonly premixWater?: Litres;
  /** Barrel with this fill and the heel, g: as water at 20 °C, what the products add to the water left out. */
  readonly weight: Grams;
  /** Measuring and dissolving begin, then the tap, then the pump. Seconds after midnight; past 86,400 is the next day. */
  readonly premixStart: Seconds;
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
  /**
   * Milligrams for one plant at the count really kept. A nutrient is left out where no product of the mix states it,
   * or where the mass of one that does is not known (measured by volume, no density).
   */
  readonly N?: number;
  readonly P2O5?: number;
  readonly K2O?: number;
  readonly P?: number;
  readonly K?: number;
  readonly Fe?: number;
}

export type CautionId =
  | 'over-label'
  | 'count-rounding'
  | 'plain-water'
  | 'label-rate'
  | 'gloves-eyes'
  | 'dust-mask'
  | 'hot-water'
  | 'ground-fault'
  | 'pump'
  | 'barrel-weight'
  | 'level-ground-covered'
  | 'backflow'
  | 'dry-plants'
  | 'runoff';

export interface Caution {
  readonly id: CautionId;
  /** Plain words; those on safety defer to the label, safety sheet, manual, local code or a licensed trade. */
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
    /** What the counts really deliver, hose and walk left out; the doses ask for the need. */
    readonly given: Litres;
    /** Need ÷ flow. */
    readonly pumping: Seconds;
    /** One way between plants for each plant; within the pumping where the wand stays open. */
    readonly walking: Seconds;
    readonly products: readonly ProductTotal[];
    /** Of what is measured; left out where a product's price is not known, and for plain water. */
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
