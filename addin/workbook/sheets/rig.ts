import { numberCell, optional, yesNoCell } from '../fields/cellValue';
import type { Family, System } from '../../core';
import type { Measured } from '../garden';
import type { Form, Line, LineUnit } from '../tables/form';
import { BARREL_UNIT, FLOW_UNIT, PACE, RIG } from './defaults';

const chosen = (name: string, family: Family): LineUnit => ({ kind: 'chosen', name, family });
const fixed = (words: string): LineUnit => ({ kind: 'fixed', words });
const unitOnly = (units: Readonly<Record<System, string>>): Line['start'] => ({
  US: { unit: units.US },
  metric: { unit: units.metric },
  imperial: { unit: units.imperial },
});
const always = (value: number | string): Line['start'] => ({
  US: { value },
  metric: { value },
  imperial: { value },
});
const from = (key: keyof (typeof RIG)['US']): Readonly<Record<System, Measured>> => ({
  US: RIG.US[key],
  metric: RIG.metric[key],
  imperial: RIG.imperial[key],
});

const above = optional(numberCell({ above: 0 }));
const least = optional(numberCell({ least: 0 }));

/** The barrel, its pump, hose and wand. */
export const rigForm = {
  key: 'rig',
  name: 'Wandcount_Rig',
  title: 'Rig',
  purpose:
    'The barrel, pump, hose and wand. The values that stand here at the start are common practice; measure your own.',
  place: 'rig',
  complete: true,
  lines: [
    {
      key: 'barrel',
      name: 'Rig_barrel',
      label: 'Barrel',
      what: 'What the barrel holds, filled to the brim. Count buckets to be sure: the size on the label is often not it.',
      schema: above,
      format: 'General',
      unit: chosen('Rig_barrel_unit', 'volume'),
      start: unitOnly(BARREL_UNIT),
    },
    {
      key: 'fillLine',
      name: 'Rig_fill_line',
      label: 'Fill line',
      what: 'Share of the barrel that you fill: 1 to the brim, 0.95 a little below.',
      schema: optional(numberCell({ above: 0, most: 1 })),
      format: '0.00',
      unit: fixed('of the barrel'),
      start: always(PACE.fillLine),
    },
    {
      key: 'heel',
      name: 'Rig_heel',
      label: 'Heel',
      what: 'Liquid that the pump cannot lift from the bottom. It is mixed once at each station and stays behind.',
      schema: least,
      format: '0.0##',
      unit: chosen('Rig_heel_unit', 'volume'),
      start: from('heel'),
    },
    {
      key: 'flow',
      name: 'Rig_flow',
      label: 'Flow at the wand',
      what: 'From the timed buckets beside. If you know it, type a number over it; it is then used instead.',
      schema: above,
      format: '0.0##',
      unit: chosen('Rig_flow_unit', 'flow'),
      formula:
        '=IF(COUNTA({timedBuckets.seconds!})>0,FEED.FLOW({Rig_bucket},{Rig_bucket_unit},{timedBuckets.seconds!},{Rig_flow_unit}),"not timed yet")',
      start: unitOnly(FLOW_UNIT),
    },
    {
      key: 'bucket',
      name: 'Rig_bucket',
      label: 'Bucket for timing',
      what: 'What you fill at the wand while you count the seconds, with the hose laid as you use it and the barrel half full.',
      schema: above,
      format: '0.0##',
      unit: chosen('Rig_bucket_unit', 'volume'),
      start: from('bucket'),
    },
    {
      key: 'spread',
      name: 'Rig_spread',
      label: 'Spread of the times',
      what: 'How far the timed buckets differ: their coefficient of variation. Under 3 % is good.',
      schema: optional(numberCell({})),
      format: '0.0',
      unit: fixed('%'),
      formula: '=IF(COUNT({timedBuckets.seconds!})>1,FEED.FLOWSPREAD({timedBuckets.seconds!}),"")',
    },
    {
      key: 'repeats',
      name: 'Rig_repeats',
      label: 'Timed buckets needed',
      what: 'How many bring the mean flow within 5 %, with 95 % confidence.',
      schema: optional(numberCell({})),
      format: '0',
      unit: fixed('times'),
      formula: '=IF(COUNT({timedBuckets.seconds!})>1,FEED.REPEATS({timedBuckets.seconds!},5),"")',
    },
    {
      key: 'tapFlow',
      name: 'Rig_tap_flow',
      label: 'Flow of the tap',
      what: 'What fills the barrel. Only the clock depends on it.',
      schema: above,
      format: '0.0##',
      unit: chosen('Rig_tap_flow_unit', 'flow'),
      start: from('tapFlow'),
    },
    {
      key: 'hoseLength',
      name: 'Rig_hose_length',
      label: 'Hose, length',
      what: 'From the pump to the wand.',
      schema: least,
      format: '0.0##',
      unit: chosen('Rig_hose_length_unit', 'length'),
      start: from('hoseLength'),
    },
    {
      key: 'hoseBore',
      name: 'Rig_hose_bore',
      label: 'Hose, bore',
      what: 'The inside diameter.',
      schema: least,
      format: '0.0##',
      unit: chosen('Rig_hose_bore_unit', 'length'),
      start: from('hoseBore'),
    },
    {
      key: 'hoseHolds',
      name: 'Rig_hose_holds',
      label: 'Hose holds',
      what: 'From length and bore. It is made up once at each station. Type a number over it if you know it.',
      schema: least,
      format: '0.0##',
      unit: chosen('Rig_hose_holds_unit', 'volume'),
      formula:
        '=IF(AND({Rig_hose_length}>0,{Rig_hose_bore}>0),FEED.BARREL(FEED.INUNITS({Rig_hose_length},{Rig_hose_length_unit},{Rig_hose_bore_unit}),{Rig_hose_bore},{Rig_hose_bore_unit},{Rig_hose_holds_unit}),0)',
      start: unitOnly(BARREL_UNIT),
    },
    {
      key: 'betweenPlants',
      name: 'Rig_between_plants',
      label: 'Between plants',
      what: 'Walking from one plant to the next.',
      schema: least,
      format: 'General',
      unit: fixed('s'),
      start: always(PACE.betweenPlants),
    },
    {
      key: 'wandStaysOpen',
      name: 'Rig_wand_stays_open',
      label: 'Wand stays open',
      what: 'yes, if the wand runs on between plants, so that the walk costs solution; no, if you close it.',
      schema: optional(yesNoCell),
      list: ['yes', 'no'],
      start: always('no'),
    },
    {
      key: 'countStep',
      name: 'Rig_count_step',
      label: 'Count in steps of',
      what: 'Counts are whole multiples of this: 1 for every second, 5 for 5, 10, 15.',
      schema: optional(numberCell({ above: 0, most: 600 })),
      format: 'General',
      unit: fixed('s'),
      start: always(PACE.countStep),
    },
    {
      key: 'emptyWeight',
      name: 'Rig_empty_weight',
      label: 'Empty weight',
      what: 'The barrel with the pump in it and nothing else.',
      schema: least,
      format: 'General',
      unit: chosen('Rig_empty_weight_unit', 'mass'),
      start: from('emptyWeight'),
    },
    {
      key: 'premixTime',
      name: 'Rig_premix_time',
      label: 'Measuring and dissolving',
      what: 'For one fill.',
      schema: least,
      format: 'General',
      unit: fixed('min'),
      start: always(PACE.premixMinutes),
    },
    {
      key: 'moveTime',
      name: 'Rig_move_time',
      label: 'Moving the barrel',
      what: 'One move, empty, with hose and pump.',
      schema: least,
      format: 'General',
      unit: fixed('min'),
      start: always(PACE.moveMinutes),
    },
  ],
} as const satisfies Form;
